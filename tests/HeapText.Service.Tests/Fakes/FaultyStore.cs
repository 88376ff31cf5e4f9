using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Tests.Fakes;

/// <summary>A real store that can be made to fail.</summary>
internal sealed class FaultyStore(IStore real) : IStore
{
    private readonly TaskCompletionSource _stalled = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Every step fails with <see cref="StoreUnavailableException"/>.</summary>
    public bool IsGone { get; set; }

    /// <summary>What is there can be read, and nothing can be added.</summary>
    public bool IsFull { get; set; }

    /// <summary>No step ever ends, except by cancellation.</summary>
    public bool IsStalled { get; set; }

    /// <summary>Ends once a turn has met the stall.</summary>
    public Task Stalled => _stalled.Task;

    /// <summary>How many of the next commits meet a conflict.</summary>
    public int Conflicts { get; set; }

    /// <summary>Called when messages were taken, before they are handed out.</summary>
    public Action OnTaken { get; set; } = static () => { };

    /// <summary>How many commits came in.</summary>
    public int Commits { get; private set; }

    public FarmerKey KeyOf(Msisdn number) => real.KeyOf(number);

    public async ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel)
    {
        if (IsStalled) _stalled.TrySetResult();
        await Gate(cancel);
        return await real.Begin(key, message, now, cancel);
    }

    public async ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel)
    {
        await Gate(cancel);
        if (IsFull) throw new StoreUnavailableException("Full.");
        Commits++;
        if (Conflicts > 0)
        {
            Conflicts--;
            return CommitOutcome.Conflict;
        }

        return await real.Commit(commit, cancel);
    }

    public async ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(
        Instant now, Duration lease, int most, CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.ClaimDue(now, lease, most, cancel);
    }

    public async ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.Allow(budget, loads, now, cancel);
    }

    public async ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel)
    {
        await Gate(cancel);
        await real.TakeOff(budget, segments, granted, cancel);
    }

    public async ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel)
    {
        await Gate(cancel);
        var taken = await real.TakeNext(line, through, now, lease, most, cancel);
        if (taken.Count > 0) OnTaken();
        cancel.ThrowIfCancellationRequested();
        return taken;
    }

    public async ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel)
    {
        await Gate(cancel);
        await real.Settle(sending, settlement, cancel);
    }

    public async ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.Note(receipt, now, cancel);
    }

    public ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel) =>
        real.Sent(key, cancel);

    public ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel) =>
        real.SetAside(most, cancel);

    public async ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel)
    {
        await Gate(cancel);
        await real.GiveBack(line, now, later, cancel);
    }

    public async ValueTask<Instant?> NextWake(CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.NextWake(cancel);
    }

    public ValueTask PutGroup(Group group, CancellationToken cancel) => real.PutGroup(group, cancel);

    public async ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.Groups(cancel);
    }

    public ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel) =>
        real.Members(groupCode, cancel);

    public ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel) =>
        real.Concerns(most, cancel);

    public ValueTask ExplainWord(OwnWord word, CancellationToken cancel) => real.ExplainWord(word, cancel);

    public async ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel)
    {
        await Gate(cancel);
        return await real.OwnWords(cancel);
    }

    public ValueTask Audit(AuditEntry entry, CancellationToken cancel) => real.Audit(entry, cancel);

    public ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel) =>
        real.AuditTrail(most, cancel);

    public ValueTask<bool> IsEmpty(CancellationToken cancel) => real.IsEmpty(cancel);

    public ValueTask DisposeAsync() => real.DisposeAsync();

    private async ValueTask Gate(CancellationToken cancel)
    {
        if (IsGone) throw new StoreUnavailableException("Gone.");
        if (IsStalled) await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancel);
    }
}
