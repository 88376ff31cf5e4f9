using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Puts farmers back into an empty store.</summary>
internal sealed class FarmerWriting(IDatabase database, Keys keys)
{
    private readonly HashSet<string> _lines = [];

    /// <summary>The lines of all messages put back.</summary>
    public IEnumerable<string> Lines => _lines;

    /// <summary>Begins to write all that belongs to a farmer.</summary>
    public IEnumerable<Task> Put(FarmerCopy farmer)
    {
        var key = farmer.Key;
        yield return database.StringSetAsync(
            keys.Farmer(key), StoredFarmer.Join(farmer.Version, farmer.Number, farmer.Record));
        foreach (var step in Index(farmer)) yield return step;
        if (farmer.Seen.Count > 0)
        {
            yield return database.SortedSetAddAsync(
                keys.Seen(key), [.. farmer.Seen.Select(seen => new SortedSetEntry(seen.Mark, seen.At))]);
            yield return database.KeyExpireAsync(keys.Seen(key), Keys.SeenLifetime);
        }
        if (farmer.Answers.Count > 0)
        {
            yield return database.HashSetAsync(
                keys.Answers(key), [.. farmer.Answers.Select(answer => new HashEntry(answer.Mark, answer.Screen))]);
            yield return database.KeyExpireAsync(keys.Answers(key), Screen.Kept.ToTimeSpan());
        }
        if (farmer.Sent.Count > 0)
        {
            yield return database.SortedSetAddAsync(
                keys.Sent(key), [.. farmer.Sent.Select(sent => new SortedSetEntry(sent.Entry, sent.At))]);
            yield return database.KeyExpireAsync(keys.Sent(key), Keys.SentLifetime);
        }
        if (farmer.Outbox.Count > 0)
            foreach (var step in Queue(farmer)) yield return step;
    }

    private IEnumerable<Task> Index(FarmerCopy farmer)
    {
        var member = Keys.Member(farmer.Key);
        var partition = farmer.Key.Partition;
        if (farmer.Due is { } due) yield return database.SortedSetAddAsync(keys.Due(partition), member, due);
        if (farmer.Group is { } group)
            yield return database.SortedSetAddAsync(keys.Members(partition), member, group);
        if (farmer.ConcernSince is { } since)
            yield return database.SortedSetAddAsync(keys.Concerns(partition), member, since);
    }

    // A message that was taken keeps its place and count, but nobody holds it any more.
    private IEnumerable<Task> Queue(FarmerCopy farmer)
    {
        var entries = farmer.Outbox.Select((message, place) => new SortedSetEntry(
            OutboxEntry.Of((message.Priority, message.Line, message.Id, message.Message), farmer.Version, place),
            message.Tries > 0 ? -message.Tries : message.NotBefore));
        var head = farmer.Outbox[0];
        foreach (var message in farmer.Outbox) _lines.Add(message.Line);
        yield return database.SortedSetAddAsync(keys.Outbox(farmer.Key), [.. entries]);
        yield return database.SortedSetAddAsync(
            keys.Waiting(farmer.Key.Partition, head.Line, head.Priority), Keys.Member(farmer.Key), head.NotBefore);
    }
}
