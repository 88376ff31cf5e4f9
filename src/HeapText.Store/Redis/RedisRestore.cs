using System.Globalization;
using System.Runtime.CompilerServices;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Fills a server store. From <see cref="Clear"/> to <see cref="Finish"/> a mark stands in the place of the
/// layout: no service starts on a store that is not whole.</summary>
internal sealed class RedisRestore : IBackupTarget
{
    private const int Together = 512;
    private readonly ConnectionMultiplexer _server;
    private readonly IDatabase _database;
    private readonly Keys _keys;
    private readonly NumberVault _vault;
    private readonly long _takenAt;
    private readonly long _number;
    private readonly FarmerWriting _farmers;
    private readonly List<Task> _underWay = new(Together);
    private readonly long[] _counts = new long[FarmerKey.Partitions];

    /// <param name="server">The connection; closed in the end.</param>
    /// <param name="keys">The keys.</param>
    /// <param name="vault">The keys of the numbers.</param>
    /// <param name="takenAt">When the backup was taken. [ms]</param>
    /// <param name="number">See <see cref="FarmerCopy.PutBack"/>.</param>
    public RedisRestore(ConnectionMultiplexer server, Keys keys, NumberVault vault, long takenAt, long number)
    {
        _server = server;
        _database = server.GetDatabase();
        _keys = keys;
        _vault = vault;
        _takenAt = takenAt;
        _number = number;
        _farmers = new FarmerWriting(_database, keys);
    }

    public async ValueTask<bool> HoldsRecords(CancellationToken cancel)
    {
        await RefuseOthers();
        var layout = (string?)await _database.StringGetAsync(_keys.Layout);
        // What a restore that was cut short had put in is in the backup.
        if (layout?.StartsWith(Keys.Restoring, StringComparison.Ordinal) == true) return false;
        await foreach (var key in All(cancel))
            if (key != _keys.Layout) return true;
        return false;
    }

    public async ValueTask Clear(CancellationToken cancel)
    {
        await _database.StringSetAsync(_keys.Layout, StoreStartCheck.Mark(Keys.Restoring, _vault));
        await foreach (var key in All(cancel))
            if (key != _keys.Layout) await Begin(_database.KeyDeleteAsync(key));
        await EndAll();
    }

    public async ValueTask Add(BackupFrame frame)
    {
        foreach (var step in Put(frame)) await Begin(step);
    }

    public async ValueTask Finish()
    {
        for (var partition = 0; partition < _counts.Length; partition++)
            if (_counts[partition] > 0)
                await Begin(_database.StringSetAsync(_keys.FarmerCount(partition), _counts[partition]));
        foreach (var line in _farmers.Lines) await Begin(_database.SetAddAsync(_keys.Lines, line));
        await EndAll();
        await _database.StringSetAsync(_keys.Layout, StoreStartCheck.Mark(StoreStartCheck.Current, _vault));
    }

    public ValueTask DisposeAsync() => _server.DisposeAsync();

    private IEnumerable<Task> Put(BackupFrame frame)
    {
        switch (frame.Kind)
        {
            case BackupKind.Farmer:
                var farmer = RecordFormat.Unpack<FarmerCopy>(frame.Packed).PutBack(_takenAt, _number);
                _counts[farmer.Key.Partition]++;
                return _farmers.Put(farmer);
            case BackupKind.Group:
                var code = RecordFormat.Unpack<Group>(frame.Packed).Code;
                return [_database.HashSetAsync(_keys.Groups, code, frame.Packed)];
            case BackupKind.OwnWord:
                var word = RecordFormat.Unpack<OwnWord>(frame.Packed);
                return [_database.HashSetAsync(_keys.OwnWords, Keys.FieldOf(word), frame.Packed)];
            case BackupKind.Audit:
                return [_database.ListLeftPushAsync(_keys.Audit, frame.Packed)];
            case BackupKind.SetAside:
                var aside = _keys.SetAside(RecordFormat.Unpack<SetAsideEntry>(frame.Packed).Key.Partition);
                return [_database.ListLeftPushAsync(aside, frame.Packed),
                    _database.ListTrimAsync(aside, 0, Keys.SetAsideKept - 1)];
            case BackupKind.Reference:
                return Put(RecordFormat.Unpack<ReferenceCopy>(frame.Packed));
            case BackupKind.EarlyReceipt:
                var early = RecordFormat.Unpack<EarlyReceiptCopy>(frame.Packed);
                var text = string.Create(
                    CultureInfo.InvariantCulture, $"{early.At} {(int)early.State} {early.StateAt}");
                return [_database.StringSetAsync(
                    _keys.EarlyReceipt(early.Mark), text, SentMessage.EarlyKept.ToTimeSpan())];
            case BackupKind.Spending:
                var spent = RecordFormat.Unpack<SpendingCopy>(frame.Packed);
                return [_database.StringSetAsync(
                    _keys.Spending(spent.Line, spent.Day), spent.Segments, Keys.SpendingLifetime)];
            default:
                throw new ArgumentOutOfRangeException(nameof(frame));
        }
    }

    private Task[] Put(ReferenceCopy reference)
    {
        var day = _keys.References(reference.Mark, reference.At / NodaConstants.MillisecondsPerDay);
        return
        [
            _database.HashSetAsync(
                day, reference.Mark, new ReferenceEntry(reference.Key, reference.Part, reference.Tail).Bytes()),
            _database.KeyExpireAsync(day, Keys.ReferenceLifetime),
        ];
    }

    // Whatever else a service would write into a store that is being filled would be lost, or never be whole.
    private async Task RefuseOthers()
    {
        foreach (var server in Servers())
        {
            var others = (await server.ClientListAsync())
                .Where(client => client.Name == RedisStore.ClientName)
                .Select(client => client.Address?.ToString())
                .ToList();
            if (others.Count > 0)
                throw new BackupFaultException(
                    $"A HeapText program is connected to the server {server.EndPoint} (from {others[0]}), so nothing "
                    + "was changed. Stop every service of this store, and restore again.");
        }
    }

    private async IAsyncEnumerable<RedisKey> All([EnumeratorCancellation] CancellationToken cancel)
    {
        foreach (var server in Servers())
            await foreach (var key in server.KeysAsync(pattern: _keys.All, pageSize: Together).WithCancellation(cancel))
                yield return key;
    }

    private IEnumerable<IServer> Servers() =>
        _server.GetServers().Where(server => server.IsConnected && !server.IsReplica);

    private async Task Begin(Task step)
    {
        _underWay.Add(step);
        if (_underWay.Count >= Together) await EndAll();
    }

    private async Task EndAll()
    {
        await Task.WhenAll(_underWay);
        _underWay.Clear();
    }
}
