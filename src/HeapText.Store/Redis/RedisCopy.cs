using System.Runtime.CompilerServices;
using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Records;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Reads the whole of a server store beside running services: each farmer as it is at one moment, not all at
/// the same.</summary>
internal sealed class RedisCopy(RedisStore store, Keys keys, long takenAt) : IBackupSource
{
    private const int Together = 256;
    private const int AuditTogether = 1_000;
    private readonly IDatabase _database = store.Server.GetDatabase();

    public async IAsyncEnumerable<BackupFrame> Read([EnumeratorCancellation] CancellationToken cancel)
    {
        foreach (var packed in await _database.HashValuesAsync(keys.Groups))
            yield return new BackupFrame(BackupKind.Group, packed!);
        foreach (var packed in await _database.HashValuesAsync(keys.OwnWords))
            yield return new BackupFrame(BackupKind.OwnWord, packed!);
        await foreach (var frame in Audit(cancel)) yield return frame;
        await foreach (var frame in Farmers(cancel)) yield return frame;
        foreach (var frame in await SetAside()) yield return frame;
        await foreach (var frame in References(cancel)) yield return frame;
        await foreach (var frame in EarlyReceipts(cancel)) yield return frame;
        await foreach (var frame in Spending(cancel)) yield return frame;
    }

    public ValueTask DisposeAsync() => store.DisposeAsync();

    // Counted from the oldest, since new ones come at the other end.
    private async IAsyncEnumerable<BackupFrame> Audit([EnumeratorCancellation] CancellationToken cancel)
    {
        for (var from = 1L; ; from += AuditTogether)
        {
            cancel.ThrowIfCancellationRequested();
            var some = await _database.ListRangeAsync(keys.Audit, -(from + AuditTogether - 1), -from);
            foreach (var packed in some.Reverse()) yield return new BackupFrame(BackupKind.Audit, packed!);
            if (some.Length < AuditTogether) yield break;
        }
    }

    private async IAsyncEnumerable<BackupFrame> Farmers([EnumeratorCancellation] CancellationToken cancel)
    {
        var reading = new FarmerReading(_database, keys);
        var expected = (await Partitions.All(partition => _database.StringGetAsync(keys.FarmerCount(partition))))
            .Sum(count => (long)count);
        // A server whose table grows meanwhile may name a key twice.
        var read = new HashSet<FarmerKey>();
        await foreach (var some in Found(keys.AllFarmers, cancel))
        {
            var fresh = some.Select(keys.FarmerOf).Where(read.Add).ToList();
            foreach (var farmer in await Task.WhenAll(fresh.Select(reading.Read)))
                if (farmer is not null)
                    yield return new BackupFrame(BackupKind.Farmer, RecordFormat.Pack(farmer));
        }
        if (read.Count < expected)
            throw new BackupFaultException(
                $"Only {read.Count} of {expected} farmers were found: the servers changed meanwhile. Back up again.");
    }

    private async Task<IEnumerable<BackupFrame>> SetAside()
    {
        var lists = await Partitions.All(partition => _database.ListRangeAsync(keys.SetAside(partition)));
        return lists.SelectMany(packed => packed)
            .OrderBy(packed => RecordFormat.Unpack<SetAsideEntry>((byte[])packed!).At)
            .Select(packed => new BackupFrame(BackupKind.SetAside, packed!));
    }

    private async IAsyncEnumerable<BackupFrame> References([EnumeratorCancellation] CancellationToken cancel)
    {
        await foreach (var some in Found(keys.AllReferences, cancel))
        {
            foreach (var key in some)
            {
                var at = Math.Min(((Keys.DayOf(key) + 1) * NodaConstants.MillisecondsPerDay) - 1, takenAt);
                foreach (var one in await _database.HashGetAllAsync(key))
                {
                    var entry = ReferenceEntry.From(one.Value!);
                    yield return new BackupFrame(BackupKind.Reference, RecordFormat.Pack(
                        new ReferenceCopy(one.Name!, entry.Key, entry.Tail, entry.Part, at)));
                }
            }
        }
    }

    private async IAsyncEnumerable<BackupFrame> EarlyReceipts([EnumeratorCancellation] CancellationToken cancel)
    {
        await foreach (var some in Found(keys.AllEarlyReceipts, cancel))
        {
            foreach (var key in some)
            {
                if ((string?)await _database.StringGetAsync(key) is not { } text) continue;
                var fields = text.Split(' ').Select(field => long.Parse(field, CultureInfo.InvariantCulture)).ToList();
                yield return new BackupFrame(BackupKind.EarlyReceipt, RecordFormat.Pack(
                    new EarlyReceiptCopy(Keys.MarkOf(key), (DeliveryState)fields[1], fields[2], fields[0])));
            }
        }
    }

    private async IAsyncEnumerable<BackupFrame> Spending([EnumeratorCancellation] CancellationToken cancel)
    {
        await foreach (var some in Found(keys.AllSpending, cancel))
        {
            foreach (var key in some)
            {
                var (day, line) = keys.SpendingOf(key);
                if ((long?)await _database.StringGetAsync(key) is { } segments)
                    yield return new BackupFrame(
                        BackupKind.Spending, RecordFormat.Pack(new SpendingCopy(day, line, segments)));
            }
        }
    }

    /// <summary>The keys of a pattern on every server that is written to.</summary>
    private async IAsyncEnumerable<RedisKey[]> Found(
        RedisValue pattern, [EnumeratorCancellation] CancellationToken cancel)
    {
        var some = new List<RedisKey>(Together);
        foreach (var server in store.Server.GetServers().Where(server => server.IsConnected && !server.IsReplica))
        {
            await foreach (var key in server.KeysAsync(pattern: pattern, pageSize: Together).WithCancellation(cancel))
            {
                some.Add(key);
                if (some.Count < Together) continue;
                yield return [.. some];
                some.Clear();
            }
        }
        if (some.Count > 0) yield return [.. some];
    }
}
