using System.Diagnostics;
using HeapText.Dialog.Engine;
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
    private static readonly Duration Lease = Duration.FromSeconds(30);

    /// <summary>Kept of the lease for storing how the sends ended: nothing is under way any more by then.</summary>
    private static readonly TimeSpan ToSettle = TimeSpan.FromSeconds(2);

    private readonly TimeProvider _time = time;
    private readonly ILogger _logger = logger;
    private readonly SendTries _tries = new();
    private readonly LineRest _rest = new(backoff, time);
    private readonly ClockWatch _clock = new(time);

    /// <summary>How far ahead a moment to try again must lie to be of a clock set back since; null once those are
    /// given back. At first only what no running process could have set.</summary>
    private Duration? _tooFarAhead = Lease + LineRest.Longest;

    /// <inheritdoc/>
    protected override async Task<int> Pass(CancellationToken cancel)
    {
        if (_rest.IsResting) return 0;
        await GiveBackWhatAnotherClockHolds(cancel);
        var asked = _time.GetTimestamp();
        // Never given up half way: what was taken unheard would wait for its lease to end.
        var taken = await store.TakeNext(
            carrier.Line, Now(), Lease, _rest.IsDoubtful ? 1 : Batch, CancellationToken.None);
        var left = Lease.ToTimeSpan() - ToSettle - _time.GetElapsedTime(asked);
        // A process that stood still since then has lost its lease: another may be sending these now.
        if (left <= TimeSpan.Zero) return taken.Count;
        using var limit = new CancellationTokenSource(left, _time);
        await Task.WhenAll(taken.Select(sending => SendAndSettle(sending, limit.Token)));
        return taken.Count;
    }

    /// <inheritdoc/>
    protected override Task Rest(CancellationToken cancel) =>
        signals.WaitToSend(carrier.Line, Pause, _time, cancel);

    private async Task GiveBackWhatAnotherClockHolds(CancellationToken cancel)
    {
        if (_clock.WasSetBack()) _tooFarAhead = Lease;
        if (_tooFarAhead is not { } ahead) return;
        await store.GiveBack(carrier.Line, Now(), ahead, cancel);
        _tooFarAhead = null;
    }

    private async Task SendAndSettle(Sending sending, CancellationToken limit)
    {
        try
        {
            var settlement = await ReasonAgainst(sending) is { } reason
                ? new Settlement.SetAside(reason)
                : Judge(sending.Message.Id, await Send(sending, limit));
            if (settlement is not Settlement.Retry) _tries.Forget(sending.Message.Id);
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

    /// <summary>Why a message is not to be sent any more; null when it is. What is no answer may have waited for its
    /// line while the farmer texted STOP, or moved to another zone.</summary>
    private async Task<string?> ReasonAgainst(Sending sending)
    {
        if (sending.Message.ExpiresAt <= Now()) return "expired";
        if (sending.Message.Priority == Priority.Reply) return null;
        var start = await store.Begin(sending.Key, null, Now(), CancellationToken.None);
        if (start.Farmer is { Stopped: true }) return "stopped";
        // Only of who has joined is it known where it is night.
        return start.Farmer is { Group: not null } joined && !ReminderHours.Allow(joined, Now()) ? "night" : null;
    }

    private async Task<SendOutcome> Send(Sending sending, CancellationToken limit)
    {
        try
        {
            return await carrier.Send(sending.Message, sending.To, limit);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested)
        {
            return new SendOutcome.TryAgain(null, LineBusy: true);
        }
        catch (Exception fault)
        {
            LogSendFailed(sending.To.Masked, sending.Message.Id, FaultTrace.Of(fault));
            return new SendOutcome.TryAgain(null);
        }
    }

    private Settlement Judge(string message, SendOutcome outcome)
    {
        switch (outcome)
        {
            case SendOutcome.Busy busy:
                return new Settlement.Retry(Now() + _rest.Busy(busy.After));
            case SendOutcome.TryAgain again:
                return JudgeFailure(message, again);
            case SendOutcome.Refused refused:
                _rest.Answered();
                return new Settlement.SetAside(refused.Reason);
            case SendOutcome.Taken taken:
                _tries.Took();
                _rest.Answered();
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
            ? _rest.Busy(again.After)
            : Duration.Min(again.After ?? backoff.After(failures), LineRest.Longest);
        return new Settlement.Retry(Now() + rest);
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
