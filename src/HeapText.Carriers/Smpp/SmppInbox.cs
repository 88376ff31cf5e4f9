using System.Threading.Channels;
using HeapText.Carriers.Numbers;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Extensions;
using Receipt = HeapText.Carriers.Smpp.Wire.Receipt;

namespace HeapText.Carriers.Smpp;

/// <summary>Hands in what a line's centre delivers, and answers each delivery once its effect is durable.</summary>
/// <remarks>Deliveries wait in lanes, one phone's always in the same, so that its texts keep their order. A full lane
/// turns deliveries away, to be sent again. What cannot be used, such as a text of a sender that is no phone, is
/// answered well and dropped: it would only come again.</remarks>
internal sealed partial class SmppInbox
{
    private const int LaneCount = 16, MostInLane = 32;
    private const int FewestDigits = 7;
    private const byte AlphanumericTon = 5;

    /// <summary>How long one delivery may take, as in the hooks.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan SweepEvery = TimeSpan.FromSeconds(1);

    private readonly SmppLineOptions _options;
    private readonly IReceiver _receiver;
    private readonly TimeProvider _time;
    private readonly ILogger _logger;
    private readonly Unsettled _unsettled;
    private readonly InboundScreens _screens;
    private readonly PartsCollector<Delivery> _collector;
    private readonly MessageIds _ids;
    private readonly Channel<Delivery>[] _lanes;

    public SmppInbox(SmppLineOptions options, IReceiver receiver, TimeProvider time, ILogger<SmppInbox> logger)
    {
        (_options, _receiver, _time, _logger) = (options, receiver, time, logger);
        _unsettled = new Unsettled(Environment.MachineName, time);
        _screens = new InboundScreens(options, receiver, new OutboundParts(options), _unsettled, time);
        _collector = new PartsCollector<Delivery>(new PartsLimits(), options.Alphabet);
        _ids = SmppLine.Ids(options);
        _lanes = [.. Enumerable.Range(0, LaneCount).Select(_ => Channel.CreateBounded<Delivery>(
            new BoundedChannelOptions(MostInLane) { SingleReader = true, SingleWriter = false }))];
    }

    /// <summary>Takes a delivery without waiting; false when there is no room.</summary>
    public bool TryAdd(Delivery delivery)
    {
        var hash = string.GetHashCode(delivery.Body.Source.Value, StringComparison.Ordinal);
        return _lanes[unchecked((uint)hash) % LaneCount].Writer.TryWrite(delivery);
    }

    /// <summary>Works until <see cref="Complete"/>, and then through what is left.</summary>
    public async Task Run()
    {
        using var over = new CancellationTokenSource();
        var sweeping = SweepNowAndThen(over.Token);
        await Task.WhenAll(_lanes.Select(lane => Task.Run(() => Work(lane.Reader))));
        await over.CancelAsync();
        await sweeping;
    }

    /// <summary>Takes no more.</summary>
    public void Complete()
    {
        foreach (var lane in _lanes) lane.Writer.TryComplete();
    }

    private async Task Work(ChannelReader<Delivery> lane)
    {
        await foreach (var delivery in lane.ReadAllAsync())
        {
            using var deadline = new CancellationTokenSource(LongestWait, _time);
            await Guard(delivery, () => Take(delivery, deadline.Token));
        }
    }

    /// <summary>Answers with a temporary error when handing in fails: the centre sends it again.</summary>
    private async Task Guard(Delivery? delivery, Func<Task> work)
    {
        try
        {
            await work();
            return;
        }
        catch (Exception expected) when (
            expected is StoreUnavailableException or TurnFailedException or OperationCanceledException)
        {
            LogNotTaken(_options.Name, expected.GetType().Name);
        }
        catch (Exception fault)
        {
            // Its message may hold what a phone sent; the kind and the place do not.
            LogFault(_options.Name, fault.GetType().Name, fault.StackTrace);
        }

        if (delivery is not null) await delivery.Answer(CommandStatus.ReceiverTemporaryError);
    }

    private Task Take(Delivery delivery, CancellationToken cancel)
    {
        var body = delivery.Body;
        if (Receipt.Read(body, _ids, _options.Alphabet) is { } receipt) return TakeReceipt(delivery, receipt, cancel);
        if (EsmClass.IsReceipt(body.EsmClass) || Phone(body.Source) is not { } from) return Drop(delivery);
        return body.Tlvs.UssdServiceOp is { } operation
            ? TakeEntry(delivery, operation, from, cancel)
            : TakeText(delivery, cancel);
    }

    private async Task TakeReceipt(Delivery delivery, Receipt receipt, CancellationToken cancel)
    {
        DeliveryState? state = receipt.State switch
        {
            ReceiptState.Delivered => DeliveryState.Delivered,
            ReceiptState.Failed => DeliveryState.Failed,
            ReceiptState.Expired => DeliveryState.Expired,
            ReceiptState.Rejected => DeliveryState.Rejected,
            _ => null,
        };
        // The centre's own clock is of no stated zone, so the moment it came in counts.
        if (state is { } final)
            await _receiver.Note(new Dialog.Ports.Receipt(_options.Name, receipt.MessageId, final, Now()), cancel);
        await delivery.Answer(CommandStatus.Ok);
    }

    private async Task TakeEntry(
        Delivery delivery, UssdServiceOp operation, Msisdn from, CancellationToken cancel)
    {
        var screen = await _screens.Take(delivery, operation, from, cancel);
        await delivery.Answer(CommandStatus.Ok);
        // A screen whose answer is bad or lost is not sent again: the farmer dials again.
        if (screen is not null) await delivery.Session.Submit(screen, cancel);
    }

    private async Task TakeText(Delivery delivery, CancellationToken cancel)
    {
        switch (_collector.Add(delivery.Body, delivery, Now()))
        {
            case Collected<Delivery>.Given given:
                await Hear(given.Text, delivery, cancel);
                break;
            case Collected<Delivery>.Known:
                await delivery.Answer(CommandStatus.Ok);
                break;
            case Collected<Delivery>.NoRoom:
                await delivery.Answer(CommandStatus.ReceiverTemporaryError);
                break;
        }
    }

    private async Task Hear(GivenText<Delivery> text, Delivery? last, CancellationToken cancel)
    {
        var isDurable = false;
        try
        {
            await Hear(text, Phone(text.From)!.Value, last, cancel);
            isDurable = true;
        }
        finally
        {
            foreach (var delivery in _collector.Settle(text, isDurable, Now()))
                await delivery.Answer(isDurable ? CommandStatus.Ok : CommandStatus.ReceiverTemporaryError);
        }
    }

    private Task<bool> Hear(GivenText<Delivery> text, Msisdn from, Delivery? last, CancellationToken cancel)
    {
        var id = _unsettled.Claim(
            last, text.Part is null && last is not null ? Fingerprint.Of(last.Body) : Fingerprint.Of(text));
        // Half a text must not be taken for what the farmer meant: the open question is asked again instead.
        return text.IsComplete
            ? _receiver.Hear(new Inbound(id, _options.Name, from, text.Text), cancel)
            : _receiver.Ring(new MissedCall(id, _options.Name, from), cancel);
    }

    private async Task SweepNowAndThen(CancellationToken over)
    {
        using var timer = new PeriodicTimer(SweepEvery, _time);
        try
        {
            while (await timer.WaitForNextTickAsync(over))
            {
                var swept = _collector.Sweep(Now());
                foreach (var delivery in swept.SendAgain)
                    await delivery.Answer(CommandStatus.ReceiverTemporaryError);
                foreach (var text in swept.Texts)
                {
                    using var deadline = new CancellationTokenSource(LongestWait, _time);
                    await Guard(null, () => Hear(text, null, deadline.Token));
                }
            }
        }
        catch (OperationCanceledException)
        {
            // No more is taken.
        }
    }

    private async Task Drop(Delivery delivery)
    {
        LogDropped(_options.Name);
        await delivery.Answer(CommandStatus.Ok);
    }

    private Msisdn? Phone(Address source) =>
        source.Ton != AlphanumericTon && source.Value.Count(char.IsAsciiDigit) >= FewestDigits
        && NumberReader.ReadReal(AddressRules.Written(source), _options.Region, _options.Countries)
            is NumberReading.Good good
            ? good.Number
            : null;

    private Instant Now() => _time.GetUtcNow().ToInstant();

    [LoggerMessage(420, LogLevel.Information, "Line {Line} dropped a delivery of a sender that is no phone")]
    private partial void LogDropped(string line);

    [LoggerMessage(421, LogLevel.Warning, "Line {Line} could not hand in a delivery, which will come again: {Kind}")]
    private partial void LogNotTaken(string line, string kind);

    [LoggerMessage(422, LogLevel.Error, "Line {Line} failed on a delivery, which will come again: {Kind} {Trace}")]
    private partial void LogFault(string line, string kind, string? trace);
}
