using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using Microsoft.Extensions.Logging;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>The home for scale: Redis or Valkey, single, Sentinel or Cluster. Each member is one script or command,
/// or one wave of them over all partitions.</summary>
internal sealed class RedisStore : IStore
{
    /// <summary>What the server lists the connections of services and verbs as.</summary>
    public const string ClientName = "heaptext";

    private readonly IDatabase _database;
    private readonly Keys _keys;
    private readonly NumberVault _vault;
    private readonly TimeProvider _time;
    private readonly RedisTurns _turns;
    private readonly RedisOutbox _outbox;
    private readonly RedisReceipts _receipts;
    private readonly RedisSpending _spending;

    private RedisStore(ConnectionMultiplexer server, Keys keys, NumberVault vault, ILogger logger, TimeProvider time)
    {
        Server = server;
        _database = server.GetDatabase();
        _keys = keys;
        _vault = vault;
        _time = time;
        _turns = new RedisTurns(_database, keys, vault);
        _outbox = new RedisOutbox(_database, keys, new SendingReader(vault, logger));
        _spending = new RedisSpending(_database, keys);
        _receipts = new RedisReceipts(_database, keys, vault, logger);
    }

    /// <summary>The connection.</summary>
    public ConnectionMultiplexer Server { get; }

    /// <summary>Connects, and checks that the server may be trusted with the records.</summary>
    /// <exception cref="InvalidOperationException">The server could lose what it acknowledges.</exception>
    /// <exception cref="InvalidDataException">A newer version, or another secret, made what is there.</exception>
    /// <exception cref="StoreUnavailableException">The server cannot be reached.</exception>
    public static async ValueTask<RedisStore> Open(
        StoreOptions options, NumberVault vault, ILogger logger, TimeProvider time, string prefix = Keys.Prefix)
    {
        var server = await Connect(options, ClientName, logger);
        try
        {
            var keys = new Keys(prefix);
            await StoreStartCheck.Layout(server.GetDatabase(), keys, vault);
            return new RedisStore(server, keys, vault, logger, time);
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }
    }

    /// <summary>Connects, and checks that the server keeps what it acknowledges.</summary>
    /// <param name="options">Where it is.</param>
    /// <param name="name">Under which the server lists the connection.</param>
    /// <param name="logger">Told of a server that may lose the last of what it acknowledged.</param>
    /// <exception cref="InvalidOperationException">The server could lose what it acknowledges.</exception>
    /// <exception cref="StoreUnavailableException">The server cannot be reached.</exception>
    public static async ValueTask<ConnectionMultiplexer> Connect(StoreOptions options, string name, ILogger logger)
    {
        var server = await Guard.Do(
            () => ConnectionMultiplexer.ConnectAsync(Settings(options.Connection, name)), CancellationToken.None);
        try
        {
            if (options.RequireDurableServer) await StoreStartCheck.Durability(server, logger);
            return server;
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }
    }

    public FarmerKey KeyOf(Msisdn number) => _vault.KeyOf(number);

    public ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel) =>
        Guard.Do(() => _turns.Begin(key, message, now), cancel);

    public ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel) =>
        Guard.Do(() => _turns.Commit(commit), cancel);

    public ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(
        Instant now, Duration lease, int most, CancellationToken cancel) =>
        Guard.Do(() => Claim(Millis.Now(now), Millis.Until(now + lease), most), cancel);

    public ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel) =>
        Guard.Do(() => _spending.Allow(budget, loads, now), cancel);

    public async ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel) =>
        await Guard.Do(() => _spending.TakeOff(budget, segments, granted), cancel);

    public ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel) =>
        Guard.Do(() => _outbox.Take(line, through, Millis.Now(now), Millis.Until(now + lease), most), cancel);

    public async ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel)
    {
        var at = Instant.FromDateTimeOffset(_time.GetUtcNow());
        var trace = settlement is Settlement.Sent sent ? SentTrace.Of(sending.Message, sent, at, _vault) : null;
        var settled = await Guard.Do(() => _outbox.Settle(sending, settlement, at, trace), cancel);
        if (settled && trace is not null) await _receipts.Index(sending.Key, trace, at);
    }

    public ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel) =>
        Guard.Do(() => _receipts.Note(receipt, now), cancel);

    public ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel)
    {
        var oldest = Instant.FromDateTimeOffset(_time.GetUtcNow()) - SentMessage.Kept;
        return Guard.Do(() => _receipts.Sent(key, oldest), cancel);
    }

    public async ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel) =>
        await Guard.Do(() => _outbox.GiveBack(line, Millis.Now(now), Millis.Until(now + later)), cancel);

    public ValueTask<Instant?> NextWake(CancellationToken cancel) => Guard.Do(NextWake, cancel);

    public async ValueTask PutGroup(Group group, CancellationToken cancel) =>
        await Guard.Do(() => _database.HashSetAsync(_keys.Groups, group.Code, RecordFormat.Pack(group)), cancel);

    public async ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel)
    {
        var packed = await Guard.Do(() => _database.HashValuesAsync(_keys.Groups), cancel);
        return [.. Entries<Group>(packed).OrderBy(group => group.Code)];
    }

    public async ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel)
    {
        var members = await Guard.Do(
            () => Partitions.All(
                partition => _database.SortedSetRangeByScoreAsync(_keys.Members(partition), groupCode, groupCode)),
            cancel);
        return [.. members.SelectMany(some => some).Select(member => Keys.FarmerOf(member!))];
    }

    public ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel) =>
        Guard.Do(() => OpenConcerns(most), cancel);

    public async ValueTask ExplainWord(OwnWord word, CancellationToken cancel) => await Guard.Do(
        () => _database.HashSetAsync(_keys.OwnWords, Keys.FieldOf(word), RecordFormat.Pack(word)), cancel);

    public async ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel)
    {
        var packed = await Guard.Do(() => _database.HashValuesAsync(_keys.OwnWords), cancel);
        return [.. Entries<OwnWord>(packed).OrderBy(word => word.District, StringComparer.Ordinal)
            .ThenBy(word => word.Word, StringComparer.Ordinal)];
    }

    public async ValueTask Audit(AuditEntry entry, CancellationToken cancel) =>
        await Guard.Do(() => _database.ListLeftPushAsync(_keys.Audit, RecordFormat.Pack(entry)), cancel);

    public async ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel) =>
        [.. Entries<AuditEntry>(await Guard.Do(() => _database.ListRangeAsync(_keys.Audit, 0, most - 1), cancel))];

    public ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel) =>
        Guard.Do(() => NewestSetAside(most), cancel);

    public async ValueTask<bool> IsEmpty(CancellationToken cancel)
    {
        var groups = await Guard.Do(() => _database.KeyExistsAsync(_keys.Groups), cancel);
        if (groups) return false;
        var farmers = await Guard.Do(
            () => Partitions.All(partition => _database.KeyExistsAsync(_keys.FarmerCount(partition))), cancel);
        return !farmers.Contains(true);
    }

    public ValueTask DisposeAsync() => Server.DisposeAsync();

    /// <summary>Fails at once when there is no connection, connects again within seconds, and times out before
    /// <see cref="StepLimit"/>.</summary>
    private static ConfigurationOptions Settings(string connection, string name)
    {
        var settings = ConfigurationOptions.Parse(connection);
        settings.ClientName = name;
        settings.AllowAdmin = true; // the start check reads CONFIG and CLUSTER INFO
        settings.AbortOnConnectFail = true;
        settings.ConnectTimeout = 3_000;
        settings.AsyncTimeout = 3_000;
        settings.KeepAlive = 5;
        settings.BacklogPolicy = BacklogPolicy.FailFast;
        settings.ReconnectRetryPolicy = new LinearRetry(500);
        return settings;
    }

    private static IEnumerable<T> Entries<T>(RedisValue[] packed) where T : class =>
        packed.Select(entry => RecordFormat.Unpack<T>((byte[])entry!));

    private async Task<IReadOnlyList<FarmerKey>> Claim(long now, long until, int most)
    {
        var claimed = new List<FarmerKey>();
        bool more;
        int before;
        do
        {
            before = claimed.Count;
            (var found, more) = await Partitions.Earliest(_database, _keys.Due, now, most - before);
            var scripts = found.GroupBy(farmer => farmer.Partition).Select(farmers => Script.Claim.Run(
                _database, [_keys.Due(farmers.Key)],
                [now, until, .. farmers.Select(farmer => (RedisValue)Keys.Member(farmer.Key))]));
            var ours = (await Task.WhenAll(scripts)).SelectMany(members => (RedisValue[])members!)
                .Select(member => Keys.FarmerOf(member!)).ToHashSet();
            claimed.AddRange(found.Select(farmer => farmer.Key).Where(ours.Contains));
        }
        while (more && claimed.Count < most && claimed.Count > before);
        return claimed;
    }

    private async Task<Instant?> NextWake()
    {
        var lines = (await _database.SetMembersAsync(_keys.Lines)).Select(line => line.ToString()).ToList();
        var moments = await Partitions.All(partition => Script.Wake.Run(
            _database,
            [_keys.Due(partition), .. lines.SelectMany(line => _keys.WaitingAll(partition, line))],
            []));
        var earliest = moments.Where(moment => !moment.IsNull).Select(moment => (long)moment).DefaultIfEmpty(-1).Min();
        return earliest < 0 ? null : Instant.FromUnixTimeMilliseconds(earliest);
    }

    private async Task<IReadOnlyList<OpenConcern>> OpenConcerns(int most)
    {
        var open = await Partitions.All(
            partition => _database.SortedSetRangeByRankWithScoresAsync(_keys.Concerns(partition), 0, most - 1));
        var oldest = open.SelectMany(some => some).OrderBy(entry => entry.Score).Take(most)
            .Select(entry => Keys.FarmerOf(entry.Element!)).ToList();
        var stored = await Task.WhenAll(oldest.Select(key => _database.StringGetAsync(_keys.Farmer(key))));
        return [.. oldest.Zip(stored, Concern).OfType<OpenConcern>()];
    }

    private async Task<IReadOnlyList<SetAsideMessage>> NewestSetAside(int most)
    {
        var packed = await Partitions.All(
            partition => _database.ListRangeAsync(_keys.SetAside(partition), 0, most - 1));
        var newest = packed.SelectMany(Entries<SetAsideEntry>).OrderByDescending(aside => aside.At).Take(most).ToList();
        var stored = await Task.WhenAll(newest.Select(aside => _database.StringGetAsync(_keys.Farmer(aside.Key))));
        return [.. newest.Zip(stored).Where(pair => !pair.Second.IsNull).Select(pair => new SetAsideMessage(
            pair.First.Key, _vault.Unseal(pair.First.Key, StoredFarmer.SealedNumber((byte[])pair.Second!)),
            pair.First.At, pair.First.Reason, pair.First.Message))];
    }

    /// <summary>Null when the concern was cleared since it was found.</summary>
    private OpenConcern? Concern(FarmerKey key, RedisValue value)
    {
        var stored = (byte[])value!;
        var farmer = RecordFormat.Unpack<Farmer>(StoredFarmer.Record(stored));
        return farmer.Concern is { } concern
            ? new OpenConcern(key, _vault.Unseal(key, StoredFarmer.SealedNumber(stored)), farmer, concern)
            : null;
    }
}
