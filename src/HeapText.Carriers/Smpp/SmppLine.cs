using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Carriers.Smpp;

/// <summary>A message centre spoken to directly, as a way out to phones.</summary>
/// <remarks>
/// A text of several parts is one message: it is taken when all its parts are. Parts taken already are not sent again
/// while the process lives, and an answer that comes too late still counts.
/// </remarks>
internal sealed partial class SmppLine(
    SmppLineOptions options, SmppLink link, Throttle throttle, TimeProvider time, ILogger<SmppLine> logger) : ICarrier
{
    private static readonly Duration UntilBound = Duration.FromSeconds(1);
    private readonly OutboundParts _parts = new(options);
    private readonly MessageIds _ids = Ids(options);
    private readonly SentParts _sent = new();

    /// <inheritdoc/>
    public string Line => options.Name;

    /// <inheritdoc/>
    public int Segments(string text) => _parts.Segments(text);

    /// <inheritdoc/>
    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        if (throttle.Left is { } left) return new SendOutcome.Busy(Duration.FromTimeSpan(left));
        if (link.Current is not { IsOpen: true } session) return new SendOutcome.Busy(UntilBound);
        var parts = _parts.Of(message, to, time.GetUtcNow().ToInstant());
        var text = _sent.Of(message.Id, parts.Count);
        var requests = new PendingRequest?[parts.Count];
        try
        {
            var worst = await Submit(session, parts, text, requests, cancel);
            CommandStatus? why = null;
            for (var i = 0; i < requests.Length; i++)
            {
                if (requests[i] is not { } request) continue;
                var answer = await session.Wait(request, cancel);
                var end = Take(answer, text, i);
                if (end > worst) (worst, why) = (end, answer?.Status);
            }

            return Judge(worst, why, text);
        }
        catch (OperationCanceledException)
        {
            _sent.Keep(text);
            throw;
        }
        finally
        {
            for (var i = 0; i < requests.Length; i++)
                if (requests[i] is { End.IsCompleted: false } late) _ = TakeLate(late, text, i);
        }
    }

    /// <summary>How a line's receipts write ids.</summary>
    internal static MessageIds Ids(SmppLineOptions options) => options.ReceiptIds switch
    {
        ReceiptIds.InHex => new MessageIds(MessageIdForm.Decimal, MessageIdForm.Hex),
        ReceiptIds.InDecimal => new MessageIds(MessageIdForm.Hex, MessageIdForm.Decimal),
        _ => new MessageIds(),
    };

    private async ValueTask<PartEnd> Submit(
        SmppSession session, IReadOnlyList<MessageBody> parts, SentText text, PendingRequest?[] requests,
        CancellationToken cancel)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            if (text.Has(i)) continue;
            // Said of an earlier part, or of another text, while this one waited for room.
            if (throttle.Left is not null) return PartEnd.Throttled;
            requests[i] = await session.Submit(parts[i], cancel);
            if (requests[i] is null) return PartEnd.Unsent;
        }

        return PartEnd.Taken;
    }

    private PartEnd Take(Pdu? answer, SentText text, int part)
    {
        var end = PartEnds.Of(answer);
        if (end == PartEnd.Throttled) throttle.Slow();
        if (end == PartEnd.Taken)
        {
            throttle.Took();
            text.Took(part, Reference((answer as Pdu.SubmitSmResp)?.MessageId, text.Id));
        }

        if (end >= PartEnd.MayPass && answer is not null) LogRefused(Line, text.Id, answer.Status);
        return end;
    }

    private async Task TakeLate(PendingRequest request, SentText text, int part)
    {
        if (await request.End is Pdu.SubmitSmResp { Status: CommandStatus.Ok } taken)
            text.Took(part, Reference(taken.MessageId, text.Id));
    }

    // A centre that names nothing goes by our own id.
    private string Reference(string? messageId, string ours) =>
        string.IsNullOrEmpty(messageId) ? ours : _ids.OfResponse(messageId);

    private SendOutcome Judge(PartEnd end, CommandStatus? why, SentText text)
    {
        if (end is PartEnd.Taken or PartEnd.Refused) _sent.Forget(text.Id);
        else _sent.Keep(text);
        return end switch
        {
            PartEnd.Taken => new SendOutcome.Taken(text.References),
            PartEnd.Unsent => new SendOutcome.Busy(UntilBound),
            PartEnd.Throttled => new SendOutcome.Busy(Duration.FromTimeSpan(throttle.Left ?? TimeSpan.Zero)),
            PartEnd.MayPass => new SendOutcome.TryAgain(null),
            PartEnd.Refused => new SendOutcome.Refused($"The message centre refused it: {why}."),
            _ => new SendOutcome.TryAgain(null, LineBusy: true),
        };
    }

    [LoggerMessage(410, LogLevel.Warning, "Line {Line} did not take a part of message {Message}: {Status}")]
    private partial void LogRefused(string line, string message, CommandStatus status);
}
