using System.Diagnostics;
using HeapText.Dialog.Ports;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>A route and how it has fared: sends one message over it, and says what is to become of it.</summary>
internal sealed partial class Outlet(OutboundRoute route, Backoff backoff, TimeProvider time, ILogger logger)
{
    private readonly SendTries _tries = new();

    /// <summary>Name of the line it sends over.</summary>
    public string Line => route.Carrier.Line;

    /// <summary>How much it may send; null for no limit.</summary>
    public LineBudget? Budget => route.Budget;

    /// <summary>Whether it is to be left alone.</summary>
    public LineRest Rest { get; } = new(backoff, time);

    /// <summary>What a message asks for of its budget.</summary>
    public Load LoadOf(Outbound message) => new(message.Priority, route.Carrier.Segments(message.Text));

    /// <summary>Sends one message; what is to become of it.</summary>
    public async Task<Settlement> Send(Sending sending, CancellationToken limit)
    {
        var id = sending.Message.Id;
        var settlement = Judge(id, await Outcome(sending, limit));
        if (settlement is Settlement.Sent or Settlement.SetAside) _tries.Forget(id);
        return settlement is Settlement.Sent sent && Line != sending.Message.Line
            ? sent with { Over = Line }
            : settlement;
    }

    private async Task<SendOutcome> Outcome(Sending sending, CancellationToken limit)
    {
        try
        {
            return await route.Carrier.Send(sending.Message, sending.To, limit);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested)
        {
            return new SendOutcome.TryAgain(null, LineBusy: true);
        }
        catch (Exception fault)
        {
            LogSendFailed(sending.To.Masked, sending.Message.Id, Turns.FaultTrace.Of(fault));
            return new SendOutcome.TryAgain(null);
        }
    }

    private Settlement Judge(string message, SendOutcome outcome)
    {
        switch (outcome)
        {
            case SendOutcome.Busy busy:
                return new Settlement.PutBack(Now() + Rest.Busy(busy.After));
            case SendOutcome.TryAgain again:
                return JudgeFailure(message, again);
            case SendOutcome.Refused refused:
                Rest.Answered();
                return new Settlement.SetAside(refused.Reason);
            case SendOutcome.Taken taken:
                _tries.Took();
                Rest.Answered();
                return new Settlement.Sent(taken.References ?? []);
            default:
                throw new UnreachableException();
        }
    }

    private Settlement JudgeFailure(string message, SendOutcome.TryAgain again)
    {
        var (failures, isSuspect, isPoison) = _tries.Failed(message);
        if (isPoison) return new Settlement.SetAside($"failed {SendTries.Most} times while the line took others");
        var rest = again.LineBusy && !isSuspect
            ? Rest.Busy(again.After)
            : Duration.Min(again.After ?? backoff.After(failures), LineRest.Longest);
        return new Settlement.Retry(Now() + rest);
    }

    private Instant Now() => time.GetUtcNow().ToInstant();

    [LoggerMessage(301, LogLevel.Error, "Sending message {Message} to {Farmer} failed and is tried again: {Trace}")]
    private partial void LogSendFailed(string farmer, string message, string trace);
}
