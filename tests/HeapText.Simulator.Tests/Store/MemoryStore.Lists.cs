using HeapText.Dialog.Ports;

namespace HeapText.Simulator.Tests.Store;

/// <summary>Groups, concerns, words and the audit trail.</summary>
internal sealed partial class MemoryStore
{
    public ValueTask PutGroup(Group group, CancellationToken cancel)
    {
        lock (home.Lock) home.Groups[group.Code] = group;
        return ValueTask.CompletedTask;
    }

    public ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel)
    {
        lock (home.Lock) return new([.. home.Groups.Values]);
    }

    public ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel)
    {
        lock (home.Lock)
            return new([.. home.Farmers.Where(one => one.Record?.Group == groupCode).Select(one => one.Key)]);
    }

    public ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel)
    {
        lock (home.Lock)
            return new([.. home.Farmers.Where(one => one.Record?.Concern is not null)
                .Select(one => new OpenConcern(one.Key, one.Number, one.Record!, one.Record!.Concern!))
                .OrderBy(one => one.Concern.Since).Take(most)]);
    }

    public ValueTask ExplainWord(OwnWord word, CancellationToken cancel)
    {
        lock (home.Lock) home.Words[(word.District, word.Word)] = word;
        return ValueTask.CompletedTask;
    }

    public ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel)
    {
        lock (home.Lock)
            return new([.. home.Words.Values.OrderBy(word => word.District, StringComparer.Ordinal)
                .ThenBy(word => word.Word, StringComparer.Ordinal)]);
    }

    public ValueTask Audit(AuditEntry entry, CancellationToken cancel)
    {
        lock (home.Lock) home.Audit.Add(entry);
        return ValueTask.CompletedTask;
    }

    public ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel)
    {
        lock (home.Lock) return new([.. Enumerable.Reverse(home.Audit).Take(most)]);
    }

    public ValueTask<bool> IsEmpty(CancellationToken cancel)
    {
        lock (home.Lock) return new(home.Farmers.Count == 0 && home.Groups.Count == 0);
    }
}
