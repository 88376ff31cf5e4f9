using HeapText.Dialog.Ports;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>Sends what waits on one line, and keeps off the line while it is busy or out of reach.</summary>
internal sealed partial class SenderWorker(
    ICarrier carrier, IStore store, WorkSignals signals, Backoff backoff, TimeProvider time,
    ILogger<SenderWorker> logger)
    : PassWorker(time, logger)
{
    private const int Batch = 64;
    private static readonly Duration Lease = Duration.FromSeconds(60);
    private readonly TimeProvider _time = time;
    private readonly ILogger _logger = logger;
    private readonly Tries _tries = new();
    private readonly LineRest _rest = new(backoff, time);

    /// <inheritdoc/>
    protected override async Task<int> Pass(CancellationToken cancel)
    {
        if (_rest.IsResting) return 0;
        var taken = await store.TakeNext(carrier.Line, Now(), Lease, _rest.IsDoubtful ? 1 : Batch, cancel);
        await Task.WhenAll(taken.Select(SendAndSettle));
        return taken.Count;
    }

    /// <inheritdoc/>
    protected override Task Rest(CancellationToken cancel) =>
        signals.WaitToSend(carrier.Line, Pause, _time, cancel);

    private async Task SendAndSettle(Sending sending)
    {
        try
        {
            var settlement = sending.Message.ExpiresAt <= Now()
                ? new Settlement.SetAside("expired")
                : Judge(sending, await Send(sending));
            if (settlement is Settlement.SetAside aside)
                LogSetAside(sending.To.Masked, sending.Message.Id, aside.Reason);
            await store.Settle(sending, settlement, CancellationToken.None);
        }
        catch (StoreUnavailableException fault)
        {
            // The lease runs out and the message is taken again, under the same id.
            LogNotSettled(fault, sending.Message.Id);
        }
    }

    private async Task<SendOutcome> Send(Sending sending)
    {
        try
        {
            return await carrier.Send(sending.Message, sending.To, CancellationToken.None);
        }
        catch (Exception fault)
        {
            LogSendFailed(sending.To.Masked, sending.Message.Id, FaultTrace.Of(fault));
            return new SendOutcome.TryAgain(null);
        }
    }

    private Settlement Judge(Sending sending, SendOutcome outcome)
    {
        var id = sending.Message.Id;
        var now = Now();
        switch (outcome)
        {
            case SendOutcome.TryAgain { LineBusy: true } busy:
                return new Settlement.Retry(now + _rest.Busy(busy.After));
            case SendOutcome.TryAgain again:
                if (_tries.FailedForGood(id)) return new Settlement.SetAside($"failed {Tries.Most} times");
                return new Settlement.Retry(now + (again.After ?? backoff.After(_tries.Failed(id))));
            default:
                _tries.Forget(id);
                _rest.Answered();
                return outcome is SendOutcome.Refused refused
                    ? new Settlement.SetAside(refused.Reason)
                    : new Settlement.Sent();
        }
    }

    private Instant Now() => _time.GetUtcNow().ToInstant();

    [LoggerMessage(301, LogLevel.Error, "Sending message {Message} to {Farmer} failed and is tried again: {Trace}")]
    private partial void LogSendFailed(string farmer, string message, string trace);

    [LoggerMessage(302, LogLevel.Warning, "Message {Message} to {Farmer} was set aside: {Reason}")]
    private partial void LogSetAside(string farmer, string message, string reason);

    [LoggerMessage(303, LogLevel.Warning,
        "How message {Message} ended could not be stored; it is sent again under its id.")]
    private partial void LogNotSettled(Exception fault, string message);
}
