using HeapText.Dialog.Ports;
using HeapText.Simulator.Tests.Store;
using HeapText.Simulator.Tests.World;
using NodaTime;

namespace HeapText.Simulator.Tests.Running;

/// <summary>The store as one instance reaches it: any call may go wrong, before it has its effect or after.</summary>
internal sealed class InstanceStore(Instance instance, Simulation simulation, TimeProvider time) : IStore
{
    private readonly MemoryStore _store = new(simulation.Home, time, simulation.Flaw);

    public FarmerKey KeyOf(Msisdn number) => _store.KeyOf(number);

    public ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel) =>
        Call("begin", key, () => _store.Begin(key, message, now, cancel));

    public ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel) =>
        Call("commit", commit.Key, () => Commit(commit), commit, CommitOutcome.Conflict);

    private async ValueTask<CommitOutcome> Commit(Commit commit)
    {
        var outcome = await _store.Commit(commit, CancellationToken.None);
        if (outcome == CommitOutcome.Committed) simulation.Rules.Committed(commit);
        return outcome;
    }

    public ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(
        Instant now, Duration lease, int most, CancellationToken cancel) =>
        Call("claim", null, () => _store.ClaimDue(now, lease, most, cancel));

    public ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel) =>
        Call("take", null, () => Take(line, through, now, lease, most));

    public ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel) =>
        Call("allow", null, () => _store.Allow(budget, loads, now, cancel));

    public ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel) =>
        Done(Call("take off", null, () => Whole(_store.TakeOff(budget, segments, granted, CancellationToken.None))));

    private async ValueTask<IReadOnlyList<Sending>> Take(
        string line, Priority through, Instant now, Duration lease, int most)
    {
        var taken = await _store.TakeNext(line, through, now, lease, most, CancellationToken.None);
        foreach (var sending in taken) instance.TakenAt[sending.Message.Id] = simulation.Timeline.Elapsed;
        return taken;
    }

    public ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel) =>
        Done(Call(
            "settle", sending.Key,
            () => Whole(_store.Settle(sending, settlement, CancellationToken.None)), settlement));

    public ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel) =>
        Call("note", null, () => _store.Note(receipt, now, cancel));

    public ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel) =>
        Done(Call("give back", null, () => Whole(_store.GiveBack(line, now, later, cancel))));

    private static async ValueTask<bool> Whole(ValueTask step)
    {
        await step;
        return true;
    }

    private static async ValueTask Done(ValueTask<bool> call) => await call;

    private async ValueTask<T> Call<T>(
        string what, FarmerKey? key, Func<ValueTask<T>> effect, object? about = null, T? conflict = default)
    {
        var fault = simulation.FaultOfCall();
        await simulation.Step(instance);
        if (fault == CallFault.KilledBefore) await simulation.KillFromInside(instance);
        if (simulation.IsStoreGone || fault == CallFault.Unavailable)
        {
            simulation.Note(instance, what, key, "unavailable", about);
            throw new StoreUnavailableException("Gone.");
        }
        if (fault == CallFault.Conflict && conflict is CommitOutcome)
        {
            simulation.Note(instance, what, key, "conflict", about);
            return conflict;
        }
        var result = await effect();
        simulation.Note(instance, what, key, result, about);
        simulation.Rules.CheckAll();
        if (fault == CallFault.KilledAfter) await simulation.KillFromInside(instance);
        await simulation.Step(instance);
        if (fault == CallFault.TimedOutThoughDone) throw new StoreUnavailableException("Too late.");
        return result;
    }

    public ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel) =>
        _store.Sent(key, cancel);

    public ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel) =>
        _store.SetAside(most, cancel);

    public ValueTask<Instant?> NextWake(CancellationToken cancel) => _store.NextWake(cancel);

    public ValueTask PutGroup(Group group, CancellationToken cancel) => _store.PutGroup(group, cancel);

    public ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel) => _store.Groups(cancel);

    public ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel) =>
        _store.Members(groupCode, cancel);

    public ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel) =>
        _store.Concerns(most, cancel);

    public ValueTask ExplainWord(OwnWord word, CancellationToken cancel) => _store.ExplainWord(word, cancel);

    public ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel) => _store.OwnWords(cancel);

    public ValueTask Audit(AuditEntry entry, CancellationToken cancel) => _store.Audit(entry, cancel);

    public ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel) =>
        _store.AuditTrail(most, cancel);

    public ValueTask<bool> IsEmpty(CancellationToken cancel) => _store.IsEmpty(cancel);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
