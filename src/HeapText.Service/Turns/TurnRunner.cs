using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Turns;

/// <summary>Takes a farmer's turn: reads the record, lets the conversation decide, commits the whole effect at
/// once.</summary>
internal sealed partial class TurnRunner(
    IStore store, IConversation conversation, WorkSignals signals, TimeProvider time, ILogger<TurnRunner> logger)
    : IReceiver
{
    private const int MostConflicts = 8;
    private readonly FarmerLocks _locks = new();
    private readonly Tries _tries = new();

    /// <summary>Called after each text whose effect is durable.</summary>
    public Action<Inbound, Instant> OnHeard { get; init; } = static (_, _) => { };

    /// <inheritdoc/>
    public async Task<bool> Hear(Inbound message, CancellationToken cancel) =>
        (await Hear(message, replies: false, cancel)).Duplicate;

    /// <summary>Takes a text whose reply goes back at once instead of being sent: what is said now, null for nothing,
    /// and whether it had its effect before. The same text again gets the same reply for <see cref="Screen.Kept"/>,
    /// and then none.</summary>
    /// <exception cref="StoreUnavailableException">Nothing was promised; the gateway may send it again.</exception>
    /// <exception cref="TurnFailedException">No answer could be worked out; the gateway may send it again.</exception>
    public Task<(string? Reply, bool Duplicate)> Reply(Inbound message, CancellationToken cancel) =>
        Hear(message, replies: true, cancel);

    private Task<(string? Reply, bool Duplicate)> Hear(Inbound message, bool replies, CancellationToken cancel)
    {
        var seen = new SeenId(message.Line, message.Id);
        return Answer(message.From, seen, (farmer, now) => Decide(farmer, message, now),
            now => OnHeard(message, now), replies, cancel);
    }

    /// <inheritdoc/>
    public async Task<bool> Ring(MissedCall call, CancellationToken cancel)
    {
        // No gateway's id of a text begins so.
        var seen = new SeenId(call.Line, $"\u001e{call.Id}");
        return (await Answer(call.From, seen, (farmer, now) => Decide(farmer, call, now), static _ => { },
            replies: false, cancel)).Duplicate;
    }

    private async Task<(string? Reply, bool Duplicate)> Answer(
        Msisdn from, SeenId seen, Func<Farmer?, Instant, Reaction> decide, Action<Instant> committed, bool replies,
        CancellationToken cancel)
    {
        var key = store.KeyOf(from);
        using var turn = await _locks.Enter(key, cancel);
        for (var conflicts = 0; conflicts < MostConflicts; conflicts++)
        {
            var now = time.GetUtcNow().ToInstant();
            var start = await store.Begin(key, seen, now, cancel);
            if (start.Seen) return (start.Answer?.Text, true);
            var (reaction, reply) = replies
                ? TakeOut(decide(start.Farmer, now), seen.Line, now)
                : (decide(start.Farmer, now), null);
            var outcome = await Commit(key, start, start.Number ?? from, seen, now, reaction, cancel, reply);
            // What the other turn of the same text answered is read in the next round.
            if (outcome == CommitOutcome.Duplicate && !replies) return (null, true);
            if (outcome != CommitOutcome.Committed) continue;
            committed(now);
            return (reply?.Text, false);
        }

        throw new StoreUnavailableException("Other turns of the same farmer kept coming first.");
    }

    // What is to be said now on the line that waits for it goes into the answer; the rest is sent in its time.
    private static (Reaction Later, Screen? Reply) TakeOut(Reaction reaction, string line, Instant now)
    {
        var said = reaction.Says.Where(says => says.Line == line && says.NotBefore <= now).ToList();
        return said.Count == 0
            ? (reaction, null)
            : (reaction with { Says = [.. reaction.Says.Except(said)] },
                new Screen(string.Join('\n', said.Select(says => says.Text)), Open: false));
    }

    /// <inheritdoc/>
    public async Task<(Screen Screen, bool Duplicate)> Dial(Dialled step, CancellationToken cancel)
    {
        // No gateway's id of a text begins so.
        var mark = string.Create(CultureInfo.InvariantCulture, $"\u001f{step.Step} {step.Session}");
        var seen = new SeenId(step.Line, mark);
        var key = store.KeyOf(step.From);
        using var turn = await _locks.Enter(key, cancel);
        for (var conflicts = 0; conflicts < MostConflicts; conflicts++)
        {
            var now = time.GetUtcNow().ToInstant();
            var start = await store.Begin(key, seen, now, cancel);
            if (start.Answer is { } given) return (given, true);
            var number = start.Number ?? step.From;
            if (Decide(start.Farmer, step, now) is not { } shown)
            {
                await Commit(key, start, number, null, now, HandOver(start.Farmer, step, now), cancel);
                throw new TurnFailedException();
            }

            // Its answer is past keeping: where the farmer is now is shown instead, and nothing changes.
            if (start.Seen) return (shown.Screen, true);
            var reaction = new Reaction(shown.Farmer, shown.Says, shown.NextDue);
            if (await Commit(key, start, number, seen, now, reaction, cancel, shown.Screen) == CommitOutcome.Committed)
                return (shown.Screen, false);
        }

        throw new StoreUnavailableException("Other turns of the same farmer kept coming first.");
    }

    /// <inheritdoc/>
    public Task<NoteOutcome> Note(Receipt receipt, CancellationToken cancel) =>
        store.Note(receipt, time.GetUtcNow().ToInstant(), cancel).AsTask();

    /// <summary>Takes the turn of a farmer who is due.</summary>
    /// <exception cref="StoreUnavailableException">The claim runs out and the farmer is claimed again.</exception>
    public async Task Wake(FarmerKey key, CancellationToken cancel)
    {
        using var turn = await _locks.Enter(key, cancel);
        for (var conflicts = 0; conflicts < MostConflicts; conflicts++)
        {
            var now = time.GetUtcNow().ToInstant();
            var start = await store.Begin(key, null, now, cancel);
            if (start is not { Farmer: { } farmer, Number: { } number }) return;
            if (Decide(key, farmer, number, now) is not { } reaction) return;
            if (await Commit(key, start, number, null, now, reaction, cancel) != CommitOutcome.Conflict) return;
        }
    }

    private async Task<CommitOutcome> Commit(
        FarmerKey key, TurnStart start, Msisdn number, SeenId? seen, Instant now, Reaction reaction,
        CancellationToken cancel, Screen? answer = null)
    {
        var outcome = await store.Commit(
            new Commit
            {
                Key = key,
                Number = number,
                ExpectedVersion = start.Version,
                Seen = seen,
                Answer = answer,
                At = now,
                Farmer = reaction.Farmer,
                NextDue = reaction.NextDue,
                Send = reaction.Says,
            },
            cancel);
        if (outcome != CommitOutcome.Committed) return outcome;
        foreach (var says in reaction.Says) signals.ToSend(says.Line);
        if (reaction.Farmer.Concern is { } concern && concern != start.Farmer?.Concern)
            LogConcern(number.Masked, reaction.Farmer.Group, concern.Reason);
        return outcome;
    }

    private Reaction Decide(Farmer? farmer, Inbound message, Instant now) => Decide(
        farmer, $"{message.Line} {message.Id}", message.Line, message.From, now,
        subject => conversation.Hear(farmer, subject, message.Line, message.Text, now));

    private Reaction Decide(Farmer? farmer, MissedCall call, Instant now) => Decide(
        farmer, $"{call.Line} \u001e{call.Id}", call.Line, call.From, now,
        subject => conversation.Ring(farmer, subject, call.Line, now));

    private Reaction Decide(
        Farmer? farmer, string tried, string line, Msisdn from, Instant now, Func<string, Reaction> decide)
    {
        var subject = farmer?.Subject ?? SubjectIds.New();
        try
        {
            var reaction = decide(subject);
            _tries.Forget(tried);
            return reaction;
        }
        catch (Exception fault)
        {
            if (!_tries.FailedForGood(tried))
            {
                LogTextFailed(from.Masked, line, FaultTrace.Of(fault));
                throw new TurnFailedException();
            }

            LogTextSetAside(from.Masked, line, FaultTrace.Of(fault));
            return farmer is null
                ? HandOver(new Farmer { Subject = subject, Line = line }, now, null)
                : HandOver(farmer, now, NextDue(farmer, from, now));
        }
    }

    private ScreenReaction? Decide(Farmer? farmer, Dialled step, Instant now)
    {
        try
        {
            return conversation.Dial(farmer, farmer?.Subject ?? SubjectIds.New(), step, now);
        }
        catch (Exception fault)
        {
            LogStepFailed(step.From.Masked, step.Line, FaultTrace.Of(fault));
            return null;
        }
    }

    private Reaction? Decide(FarmerKey key, Farmer farmer, Msisdn number, Instant now)
    {
        try
        {
            var reaction = conversation.Wake(farmer, now);
            _tries.Forget(key.Hash);
            return reaction;
        }
        catch (Exception fault)
        {
            if (!_tries.FailedForGood(key.Hash))
            {
                LogWakeFailed(number.Masked, FaultTrace.Of(fault));
                return null;
            }

            LogWakeSetAside(number.Masked, FaultTrace.Of(fault));
            return HandOver(farmer, now, null);
        }
    }

    // A text that fails says nothing against the reminders that were to come.
    private Instant? NextDue(Farmer farmer, Msisdn number, Instant now)
    {
        try
        {
            return conversation.NextDue(farmer, now);
        }
        catch (Exception fault)
        {
            LogWakeSetAside(number.Masked, FaultTrace.Of(fault));
            return null;
        }
    }

    private Reaction HandOver(Farmer? farmer, Dialled step, Instant now) => farmer is null
        ? HandOver(new Farmer { Subject = SubjectIds.New(), Line = step.Line }, now, null)
        : HandOver(farmer, now, NextDue(farmer, step.From, now));

    // Nothing said by machine: the officer's list shows the farmer, and the next text is a new start.
    private static Reaction HandOver(Farmer farmer, Instant now, Instant? nextDue)
    {
        var fault = new Concern { Reason = ConcernReason.ServiceFault, Since = now };
        return new Reaction(farmer with { Concern = farmer.Concern?.And(fault.Reason) ?? fault }, [], nextDue);
    }

    [LoggerMessage(100, LogLevel.Error, "A text or call of {Farmer} on line {Line} could not be answered: {Trace}")]
    private partial void LogTextFailed(string farmer, string line, string trace);

    [LoggerMessage(101, LogLevel.Error,
        "A text or call of {Farmer} on line {Line} was handed to a person after five tries: {Trace}")]
    private partial void LogTextSetAside(string farmer, string line, string trace);

    [LoggerMessage(102, LogLevel.Error, "What is due for {Farmer} could not be worked out and is tried again: {Trace}")]
    private partial void LogWakeFailed(string farmer, string trace);

    [LoggerMessage(105, LogLevel.Error,
        "A step on the screen of {Farmer} on line {Line} could not be answered and was handed to a person: {Trace}")]
    private partial void LogStepFailed(string farmer, string line, string trace);

    [LoggerMessage(104, LogLevel.Warning, "{Farmer} of group {Group} waits for a person: {Reason}")]
    private partial void LogConcern(string farmer, int? group, ConcernReason reason);

    [LoggerMessage(103, LogLevel.Error,
        "What is due for {Farmer} cannot be worked out and was handed to a person: {Trace}")]
    private partial void LogWakeSetAside(string farmer, string trace);
}
