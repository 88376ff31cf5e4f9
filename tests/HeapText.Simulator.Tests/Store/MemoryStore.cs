using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Simulator.Tests.Store;

/// <summary>A store in memory that keeps the port's contract, or breaks it in one named way.</summary>
internal sealed partial class MemoryStore(MemoryHome home, TimeProvider time, Flaw flaw = Flaw.None) : IStore
{
    public FarmerKey KeyOf(Msisdn number)
    {
        lock (home.Lock) return home.KeyOf(number);
    }

    public ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock) return new(Start(key, message, now));
    }

    private TurnStart Start(FarmerKey key, SeenId? message, Instant now)
    {
        if (home.Find(key) is not { } farmer) return new TurnStart(null, 0, null, false);
        if (message is not { } id || !farmer.Seen.TryGetValue(id, out var seen) || now > seen.At + SeenId.Kept)
            return new TurnStart(farmer.Record, farmer.Version, farmer.Number, false);
        var answer = now <= seen.At + Screen.Kept ? seen.Answer : null;
        return new TurnStart(farmer.Record, farmer.Version, farmer.Number, true, answer);
    }

    public ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            if (home.KeyOf(commit.Number) != commit.Key) throw new ArgumentException("This is another's key.");
            var farmer = home.Find(commit.Key);
            if (commit.Seen is { } id && farmer?.Seen.TryGetValue(id, out var seen) == true
                && commit.At <= seen.At + SeenId.Kept)
                return new(CommitOutcome.Duplicate);
            if (commit.ExpectedVersion != (farmer?.Version ?? 0) && flaw != Flaw.IgnoresVersions)
                return new(CommitOutcome.Conflict);
            if (flaw == Flaw.LosesCommits && farmer?.Version % 7 == 6) return new(CommitOutcome.Committed);
            Take(farmer ?? home.Add(commit.Key, commit.Number), commit);
            return new(CommitOutcome.Committed);
        }
    }

    private void Take(MemoryFarmer farmer, Commit commit)
    {
        farmer.Record = commit.Farmer;
        farmer.Version++;
        if (commit.Seen is { } id && flaw != Flaw.ForgetsSeen) farmer.Seen[id] = (commit.At, commit.Answer);
        var drops = flaw == Flaw.DropsDue && farmer.Version % 5 == 4;
        farmer.Due = commit.NextDue is { } due && !drops ? Millis.Until(due) : null;
        foreach (var message in commit.Send) farmer.Queue(new Waiting(message, home.NextSequence()));
    }

    public ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(
        Instant now, Duration lease, int most, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var at = Millis.Now(now);
            List<MemoryFarmer> due = [.. home.Farmers.Where(one => one.Due <= at).OrderBy(one => one.Due).Take(most)];
            foreach (var farmer in due)
                farmer.Due = flaw == Flaw.ForgetsClaimed ? null : Millis.Until(now + lease);
            return new([.. due.Select(one => one.Key)]);
        }
    }

    public ValueTask<Instant?> NextWake(CancellationToken cancel)
    {
        lock (home.Lock)
        {
            var (due, ready) = (home.NextDue(), home.NextReady());
            var next = due < ready ? due : ready ?? due;
            return new(next is { } at ? Instant.FromUnixTimeMilliseconds(at) : null);
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private Instant Now() => time.GetUtcNow().ToInstant();
}
