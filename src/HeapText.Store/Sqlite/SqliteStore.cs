using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace HeapText.Store.Sqlite;

/// <summary>The embedded home: one SQLite file, one writer, many readers.</summary>
internal sealed class SqliteStore : IStore
{
    /// <summary>Name of the database in the data folder.</summary>
    public const string FileName = "heaptext.db";

    private static readonly Duration LongestLease = Duration.FromMinutes(1);
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(3);
    private readonly NumberVault _vault;
    private readonly TimeProvider _time;
    private readonly Readers _readers;
    private readonly SendingReader _sendings;
    private readonly SpendingSteps _spending = new();

    private SqliteStore(
        Session session, string file, NumberVault vault, ILogger logger, TimeProvider time, int queueLimit)
    {
        _vault = vault;
        _time = time;
        _readers = new Readers(file);
        _sendings = new SendingReader(vault, logger);
        Writer = new SqliteWriter(session, logger, queueLimit);
    }

    /// <summary>The way in for all writes.</summary>
    public SqliteWriter Writer { get; }

    /// <summary>Opens the store in a folder, making or migrating its file.</summary>
    /// <exception cref="InvalidDataException">A newer version wrote the file, or under another secret.</exception>
    /// <exception cref="StoreUnavailableException">The file cannot be opened or written.</exception>
    public static SqliteStore Open(
        string folder, NumberVault vault, ILogger logger, TimeProvider time,
        int queueLimit = SqliteWriter.QueueLimit) =>
        Open(folder, vault, logger, time, queueLimit, session =>
        {
            Schema.Prepare(session, vault);
            ReleaseLeases(session, Instant.FromDateTimeOffset(time.GetUtcNow()));
        });

    /// <summary>Opens a store that a service may be using: SQLite lets several processes write by turns, and what is
    /// leased belongs to the service.</summary>
    /// <exception cref="InvalidDataException">Another version wrote the file, or under another secret.</exception>
    /// <exception cref="StoreUnavailableException">The file cannot be opened or written.</exception>
    public static SqliteStore OpenBeside(string folder, NumberVault vault, ILogger logger) => Open(
        folder, vault, logger, TimeProvider.System, SqliteWriter.QueueLimit, session => Schema.Check(session, vault));

    private static SqliteStore Open(
        string folder, NumberVault vault, ILogger logger, TimeProvider time, int queueLimit, Action<Session> prepare)
    {
        var file = Path.Combine(folder, FileName);
        Session? session = null;
        try
        {
            session = Session.Open(file, LockWait);
            prepare(session);
            var store = new SqliteStore(session, file, vault, logger, time, queueLimit);
            session = null;
            return store;
        }
        catch (SqliteException e)
        {
            throw new StoreUnavailableException($"The store in '{folder}' cannot be opened.", e);
        }
        finally
        {
            session?.Dispose();
        }
    }

    // Nobody else uses the file, so what is leased was leased by a process that is gone. A message waiting for its
    // next try is brought forward too, however late: the clock may have been set back since. So is a farmer due
    // within the minute, which is harmless: an early wake says nothing.
    private static void ReleaseLeases(Session session, Instant now)
    {
        session.Run(Tables.Outbox.Release, Millis.Now(now));
        session.Run(Tables.Farmers.Release, Millis.Now(now), Millis.Until(now + LongestLease));
    }

    public FarmerKey KeyOf(Msisdn number) => _vault.KeyOf(number);

    public ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return ValueTask.FromResult(_readers.Read(session => ReadTurn(session, key, message, now)));
    }

    public ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel) =>
        Writer.Do(new CommitStep(commit, _vault).Run, cancel);

    public ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(
        Instant now, Duration lease, int most, CancellationToken cancel) =>
        Writer.Do<IReadOnlyList<FarmerKey>>(
            session => ClaimDue(session, Millis.Now(now), Millis.Until(now + lease), most), cancel);

    public ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel) => loads.Count == 0
        ? Read(session => _spending.Allow(session, budget, loads, now), cancel)
        : Writer.Do(session => _spending.Allow(session, budget, loads, now), cancel);

    public async ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel) =>
        await Writer.Do(session => SpendingSteps.TakeOff(session, budget, segments, granted), cancel);

    public async ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel)
    {
        var taken = await Writer.Do(
            session => OutboxSteps.Take(session, line, through, Millis.Now(now), Millis.Until(now + lease), most),
            cancel);
        return [.. taken
            .Select(row => _sendings.Read(
                KeyFrom(row.Key), row.Number, () => RecordFormat.Unpack<Outbound>(row.Message), row.Tries + 1))
            .OfType<Sending>()];
    }

    public async ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel)
    {
        var at = Instant.FromDateTimeOffset(_time.GetUtcNow());
        var trace = settlement is Settlement.Sent sent ? SentTrace.Of(sending.Message, sent, at, _vault) : null;
        await Writer.Do(session => OutboxSteps.Settle(session, sending, settlement, at, trace), cancel);
    }

    public ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel)
    {
        var mark = _vault.MarkOf(receipt.Line, receipt.Reference);
        return Writer.Do(session => ReceiptSteps.Note(session, mark, receipt, now), cancel);
    }

    public ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel)
    {
        var oldest = Instant.FromDateTimeOffset(_time.GetUtcNow()) - SentMessage.Kept;
        return Read<IReadOnlyList<SentMessage>>(session => ReceiptSteps.Sent(session, key, oldest), cancel);
    }

    public async ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel) =>
        await Write(Tables.Outbox.GiveBack, [line, Millis.Now(now), Millis.Until(now + later)], cancel);

    public ValueTask<Instant?> NextWake(CancellationToken cancel) =>
        Read<Instant?>(
            session => session.Scalar(Tables.Farmers.NextWake) is long at ? Instant.FromUnixTimeMilliseconds(at) : null,
            cancel);

    public async ValueTask PutGroup(Group group, CancellationToken cancel) =>
        await Write(Tables.Groups.Put, [group.Code, RecordFormat.Pack(group)], cancel);

    public ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel) =>
        Read<IReadOnlyList<Group>>(session => Entries<Group>(session, Tables.Groups.All), cancel);

    public ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel) =>
        Read<IReadOnlyList<FarmerKey>>(
            session =>
            {
                var keys = new List<FarmerKey>();
                using var rows = session.Rows(Tables.Farmers.OfGroup, groupCode);
                while (rows.Read()) keys.Add(KeyFrom(rows.GetFieldValue<byte[]>(0)));
                return keys;
            },
            cancel);

    public ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel) =>
        Read<IReadOnlyList<OpenConcern>>(
            session =>
            {
                var open = new List<OpenConcern>();
                using var rows = session.Rows(Tables.Farmers.WithConcern, most);
                while (rows.Read())
                {
                    var key = KeyFrom(rows.GetFieldValue<byte[]>(0));
                    var farmer = RecordFormat.Unpack<Farmer>(rows.GetFieldValue<byte[]>(2));
                    var number = _vault.Unseal(key, rows.GetFieldValue<byte[]>(1));
                    open.Add(new OpenConcern(key, number, farmer, farmer.Concern!));
                }
                return open;
            },
            cancel);

    public async ValueTask ExplainWord(OwnWord word, CancellationToken cancel) =>
        await Write(Tables.OwnWords.Put, [word.District, word.Word, RecordFormat.Pack(word)], cancel);

    public ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel) =>
        Read<IReadOnlyList<OwnWord>>(session => Entries<OwnWord>(session, Tables.OwnWords.All), cancel);

    public async ValueTask Audit(AuditEntry entry, CancellationToken cancel) =>
        await Write(Tables.Audits.Add, [RecordFormat.Pack(entry)], cancel);

    public ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel) =>
        Read<IReadOnlyList<AuditEntry>>(session => Entries<AuditEntry>(session, Tables.Audits.Newest, most), cancel);

    public ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel) =>
        Read<IReadOnlyList<SetAsideMessage>>(
            session =>
            {
                var aside = new List<SetAsideMessage>();
                using var rows = session.Rows(Tables.SetAside.Newest, most);
                while (rows.Read())
                {
                    var entry = RecordFormat.Unpack<SetAsideEntry>(rows.GetFieldValue<byte[]>(0));
                    var number = _vault.Unseal(entry.Key, rows.GetFieldValue<byte[]>(1));
                    aside.Add(new SetAsideMessage(entry.Key, number, entry.At, entry.Reason, entry.Message));
                }
                return aside;
            },
            cancel);

    public ValueTask<bool> IsEmpty(CancellationToken cancel) =>
        Read(session => session.Scalar(Tables.Farmers.Any) is 0L, cancel);

    public async ValueTask DisposeAsync()
    {
        await Writer.DisposeAsync();
        _readers.Dispose();
    }

    private TurnStart ReadTurn(Session session, FarmerKey key, SeenId? message, Instant now)
    {
        var mark = message is { } seen ? _vault.MarkOf(seen) : [];
        using var rows = session.Rows(
            Tables.Farmers.Begin, Convert.FromHexString(key.Hash), mark, Millis.Until(now - SeenId.Kept),
            Millis.Until(now - Screen.Kept));
        if (!rows.Read()) return new TurnStart(null, 0, null, false);
        return new TurnStart(
            RecordFormat.Unpack<Farmer>(rows.GetFieldValue<byte[]>(2)), rows.GetInt64(0),
            _vault.Unseal(key, rows.GetFieldValue<byte[]>(1)), rows.GetBoolean(3),
            rows.IsDBNull(4) ? null : RecordFormat.Unpack<Screen>(rows.GetFieldValue<byte[]>(4)));
    }

    private static List<FarmerKey> ClaimDue(Session session, long now, long until, int most)
    {
        var due = new List<(long Id, FarmerKey Key)>();
        using (var rows = session.Rows(Tables.Farmers.Due, now, most))
            while (rows.Read()) due.Add((rows.GetInt64(0), KeyFrom(rows.GetFieldValue<byte[]>(1))));
        foreach (var farmer in due) session.Run(Tables.Farmers.Claim, farmer.Id, until);
        return due.ConvertAll(farmer => farmer.Key);
    }

    private static List<T> Entries<T>(Session session, string sql, params ReadOnlySpan<object?> values)
        where T : class
    {
        var entries = new List<T>();
        using var rows = session.Rows(sql, values);
        while (rows.Read()) entries.Add(RecordFormat.Unpack<T>(rows.GetFieldValue<byte[]>(0)));
        return entries;
    }

    private static FarmerKey KeyFrom(byte[] hash) => new(Convert.ToHexStringLower(hash));

    private ValueTask<bool> Write(string sql, object?[] values, CancellationToken cancel) =>
        Writer.Do(
            session =>
            {
                session.Run(sql, values);
                return true;
            },
            cancel);

    private ValueTask<T> Read<T>(Func<Session, T> read, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return ValueTask.FromResult(_readers.Read(read));
    }
}
