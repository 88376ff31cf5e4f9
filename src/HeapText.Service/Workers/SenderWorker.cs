using System.Collections.Concurrent;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>Sends what waits on one line, within its budget, and keeps off the line while it is busy or out of
/// reach.</summary>
/// <remarks>
/// While the line fails, its messages go over its backup, but for those the line may have taken already: they stay with
/// it, since a repeat elsewhere could reach the farmer twice. So does the one message that tries the line again. What
/// the backup may have taken likewise stays with the backup; that is kept in memory, so a restart forgets it.
/// </remarks>
internal sealed partial class SenderWorker(
    OutboundRoute own, OutboundRoute? backup, IStore store, WorkSignals signals, Backoff backoff, TimeProvider time,
    ILogger<SenderWorker> logger)
    : PassWorker(time, logger)
{
    private const int Batch = 64;
    private const int MostOverBackup = 10_000;
    private static readonly Duration Lease = Duration.FromSeconds(30);

    /// <summary>A message that a line with a backup did not take waits no longer: it may go elsewhere then.</summary>
    private static readonly Duration LongestWithBackup = LineRest.FailingAfter;

    /// <summary>Kept of the lease for storing how the sends ended: nothing is under way any more by then.</summary>
    private static readonly TimeSpan ToSettle = TimeSpan.FromSeconds(2);

    private static readonly Duration BetweenRateLooks = Duration.FromMilliseconds(100);
    private static readonly Duration BetweenCapLooks = Duration.FromMinutes(1);

    private readonly TimeProvider _time = time;
    private readonly ILogger _logger = logger;
    private readonly Outlet _own = new(own, backoff, time, logger);
    private readonly Outlet? _backup = backup is null ? null : new Outlet(backup, backoff, time, logger);
    private readonly ConcurrentDictionary<string, bool> _overBackup = new(StringComparer.Ordinal);
    private readonly ClockWatch _clock = new(time);
    private bool _diverted;
    private (LocalDate Day, Priority? Through) _capLogged;
    private Instant? _askAgain;

    /// <summary>How far ahead a moment to try again must lie to be of a clock set back since; null once those are
    /// given back. At first only what no running process could have set.</summary>
    private Duration? _tooFarAhead = Lease + LineRest.Longest;

    /// <inheritdoc/>
    protected override async Task<int> Pass(CancellationToken cancel)
    {
        _askAgain = null;
        var diverts = Diverts();
        if (!diverts && _own.Rest.IsResting) return 0;
        await GiveBackWhatAnotherClockHolds(cancel);
        if (await Room(diverts ? _backup! : _own, cancel) is not { Room: > 0 and var room, Through: { } through })
            return 0;
        var most = Math.Min(room, !diverts && _own.Rest.IsDoubtful ? 1 : Batch);
        var asked = _time.GetTimestamp();
        // Never given up half way: what was taken unheard would wait for its lease to end.
        var taken = await store.TakeNext(_own.Line, through, Now(), Lease, most, CancellationToken.None);
        if (taken.Count == 0) return 0;
        var planned = Now();
        var steps = await Plan(taken, diverts, planned);
        var left = Lease.ToTimeSpan() - ToSettle - _time.GetElapsedTime(asked);
        // A process that stood still since then has lost its lease: another may be sending these now.
        if (left <= TimeSpan.Zero) return taken.Count;
        using var limit = new CancellationTokenSource(left, _time);
        await Task.WhenAll(steps.Select(step => SendAndSettle(step, planned, limit.Token)));
        return taken.Count;
    }

    /// <inheritdoc/>
    protected override Task Rest(CancellationToken cancel)
    {
        var pause = _askAgain is { } at ? (at - Now()).ToTimeSpan() : Pause;
        return signals.WaitToSend(_own.Line, pause > TimeSpan.Zero && pause < Pause ? pause : Pause, _time, cancel);
    }

    /// <summary>Whether messages go over the backup now.</summary>
    private bool Diverts()
    {
        var fails = _backup is not null && _own.Rest.IsFailing;
        if (fails && !_diverted) LogDiverted(_own.Line, _backup!.Line);
        if (!fails && _diverted) LogBack(_own.Line);
        _diverted = fails;
        return fails && !_backup!.Rest.IsResting;
    }

    private async Task GiveBackWhatAnotherClockHolds(CancellationToken cancel)
    {
        if (_clock.WasSetBack()) _tooFarAhead = Lease;
        if (_tooFarAhead is not { } ahead) return;
        await store.GiveBack(_own.Line, Now(), ahead, cancel);
        _tooFarAhead = null;
    }

    private async Task<Allowance> Room(Outlet over, CancellationToken cancel)
    {
        if (over.Budget is not { } budget) return new Allowance(0, int.MaxValue, Priority.Notice, Now());
        var room = await store.Allow(budget, [], Now(), cancel);
        var seen = (budget.DayOf(Now()), room.Through);
        if (room.Through != Priority.Notice && _capLogged != seen)
        {
            _capLogged = seen;
            LogCapMet(over.Line, room.Through is { } through ? $"only {through} and before" : "nothing");
        }
        if (room.Room == 0) _askAgain = room.AskAgain;
        return room;
    }

    /// <summary>What is to be done with each message taken.</summary>
    private async Task<List<Step>> Plan(IReadOnlyList<Sending> taken, bool diverts, Instant now)
    {
        var judged = taken.Zip(await Task.WhenAll(taken.Select(ReasonAgainst))).ToList();
        var steps = judged.Where(one => one.Second is not null)
            .Select(one => new Step(one.First, null, null, one.Second)).ToList();
        var alive = judged.Where(one => one.Second is null).Select(one => one.First).ToList();
        var waits = now + Duration.Max(_own.Rest.Left, Duration.FromSeconds(1));
        var chosen = Choose(alive, diverts);
        steps.AddRange(chosen.Where(one => one.Over is null).Select(one => new Step(one.Sending, null, waits)));
        foreach (var group in chosen.Where(one => one.Over is not null).GroupBy(one => one.Over!))
        {
            var sendings = group.Select(one => one.Sending).ToList();
            var (granted, later) = await Charge(group.Key, sendings, now);
            steps.AddRange(sendings.Take(granted).Select(sending => new Step(sending, group.Key, null)));
            steps.AddRange(sendings.Skip(granted).Select(sending => new Step(sending, null, later)));
        }
        return steps;
    }

    /// <summary>What each message goes over; null for one that waits.</summary>
    private IEnumerable<(Sending Sending, Outlet? Over)> Choose(List<Sending> taken, bool diverts)
    {
        // What tries the line again is a message that is bound to it, where there is one.
        var probe = diverts && !_own.Rest.IsResting
            ? taken.Find(IsBound) ?? taken.Find(sending => !_overBackup.ContainsKey(sending.Message.Id))
            : null;
        return [.. taken.Select(sending => (sending, Over(sending)))];

        Outlet? Over(Sending sending)
        {
            if (_overBackup.ContainsKey(sending.Message.Id)) return _backup!.Rest.IsResting ? null : _backup;
            if (!diverts || sending == probe) return _own;
            return IsBound(sending) ? null : _backup;
        }

        bool IsBound(Sending sending) => sending.Attempt > 1 && !_overBackup.ContainsKey(sending.Message.Id);
    }

    /// <summary>How many of the messages may go, from the first, and when to take the others again.</summary>
    private async Task<(int Granted, Instant Later)> Charge(Outlet over, List<Sending> sendings, Instant now)
    {
        if (over.Budget is not { } budget) return (sendings.Count, now);
        var loads = sendings.ConvertAll(sending => over.LoadOf(sending.Message));
        var allowed = await store.Allow(budget, loads, now, CancellationToken.None);
        if (allowed.Granted == loads.Count) return (allowed.Granted, now);
        // A day's last segments are too few for it: there is no room again within moments, as under the rate.
        var meetsCap = allowed.Room >= Math.Min(loads[allowed.Granted].Segments, budget.SegmentsPerWindow);
        var soonest = now + (meetsCap ? BetweenCapLooks : BetweenRateLooks);
        return (allowed.Granted, Instant.Max(allowed.AskAgain, soonest));
    }

    private async Task SendAndSettle(Step step, Instant planned, CancellationToken limit)
    {
        var sending = step.Sending;
        try
        {
            var settlement = step switch
            {
                { Over: { } over } => Noted(sending, over, await over.Send(sending, limit)),
                { Later: { } later } => new Settlement.PutBack(later),
                _ => new Settlement.SetAside(step.Against!),
            };
            if (settlement is Settlement.SetAside aside)
                LogSetAside(sending.To.Masked, sending.Message.Id, aside.Reason);
            await store.Settle(sending, settlement, CancellationToken.None);
            if (settlement is Settlement.PutBack && step.Over is { Budget: { } budget } tried)
                await store.TakeOff(
                    budget, tried.LoadOf(sending.Message).Segments, planned, CancellationToken.None);
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

    private Settlement Noted(Sending sending, Outlet over, Settlement settlement)
    {
        var id = sending.Message.Id;
        if (over == _backup)
        {
            if (_overBackup.Count >= MostOverBackup) _overBackup.Clear();
            if (settlement is Settlement.Retry) _overBackup[id] = true;
            else if (settlement is not Settlement.PutBack) _overBackup.TryRemove(id, out _);
        }
        return settlement is Settlement.PutBack back && _backup is not null
            ? new Settlement.PutBack(Instant.Min(back.At, Now() + LongestWithBackup))
            : settlement;
    }

    private Instant Now() => _time.GetUtcNow().ToInstant();

    /// <summary>A message taken, and what it is sent over; put back until later where that is null; set aside for what
    /// is against it where both are.</summary>
    private sealed record Step(Sending Sending, Outlet? Over, Instant? Later, string? Against = null);

    [LoggerMessage(302, LogLevel.Warning, "Message {Message} to {Farmer} was set aside: {Reason}")]
    private partial void LogSetAside(string farmer, string message, string reason);

    [LoggerMessage(303, LogLevel.Warning,
        "How message {Message} ended could not be stored; it is sent again under its id.")]
    private partial void LogNotSettled(Exception fault, string message);

    [LoggerMessage(304, LogLevel.Warning, "Line {Line} has failed for more than a minute: line {Backup} sends for it")]
    private partial void LogDiverted(string line, string backup);

    [LoggerMessage(305, LogLevel.Warning, "Line {Line} answers again and sends for itself")]
    private partial void LogBack(string line);

    [LoggerMessage(306, LogLevel.Warning, "Line {Line} meets a cap of the day: {What} goes until the day turns")]
    private partial void LogCapMet(string line, string what);
}
