using System.Runtime.CompilerServices;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using Microsoft.Data.Sqlite;

namespace HeapText.Store.Sqlite;

/// <summary>A copy of the embedded store, taken beside a running service at one moment. Reading it holds up
/// nobody.</summary>
internal sealed class SqliteCopy : IBackupSource
{
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(10);
    private readonly string _copy;
    private readonly Session _session;

    private SqliteCopy(string copy, Session session)
    {
        _copy = copy;
        _session = session;
    }

    /// <summary>Copies the store by SQLite's online backup. The copy is brought to the layout of this version; the
    /// store stays as it is.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="copy">Where the copy is made, for this user alone; deleted in the end.</param>
    /// <param name="vault">The keys of the store.</param>
    /// <exception cref="InvalidDataException">A newer version wrote the store, or under another secret.</exception>
    /// <exception cref="StoreUnavailableException">It cannot be read, or the copy not be written.</exception>
    public static SqliteCopy Take(string folder, string copy, NumberVault vault)
    {
        Session? session = null;
        try
        {
            Delete(copy);
            MakePrivate(copy);
            using (var live = Session.Open(Path.Combine(folder, SqliteStore.FileName), LockWait)) live.CopyTo(copy);
            session = Session.Open(copy, LockWait);
            Schema.Prepare(session, vault);
            return new SqliteCopy(copy, session);
        }
        catch (Exception e)
        {
            session?.Dispose();
            Delete(copy);
            if (e is not SqliteException) throw;
            throw new StoreUnavailableException($"The store in '{folder}' cannot be copied: {e.Message}.", e);
        }
    }

    public async IAsyncEnumerable<BackupFrame> Read([EnumeratorCancellation] CancellationToken cancel)
    {
        foreach (var frame in All())
        {
            cancel.ThrowIfCancellationRequested();
            yield return frame;
        }
        await Task.CompletedTask;
    }

    public ValueTask DisposeAsync()
    {
        _session.Dispose();
        Delete(_copy);
        return ValueTask.CompletedTask;
    }

    internal static void Delete(string file)
    {
        foreach (var part in new[] { "", "-wal", "-shm", "-journal" }) File.Delete(file + part);
    }

    internal static void MakePrivate(string file)
    {
        var settings = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) settings.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        new FileStream(file, settings).Dispose();
    }

    private IEnumerable<BackupFrame> All() => Entries(BackupKind.Group, BackupTables.Groups)
        .Concat(Entries(BackupKind.OwnWord, BackupTables.OwnWords))
        .Concat(Entries(BackupKind.Audit, BackupTables.Audits))
        .Concat(Packed(BackupKind.Farmer, BackupTables.Farmers, Farmer))
        .Concat(Entries(BackupKind.SetAside, BackupTables.SetAside))
        .Concat(Packed(BackupKind.Reference, BackupTables.References, row => new ReferenceCopy(
            row.GetFieldValue<byte[]>(0), KeyFrom(row.GetFieldValue<byte[]>(1)), row.GetString(2), row.GetInt32(3),
            row.GetInt64(4))))
        .Concat(Packed(BackupKind.EarlyReceipt, BackupTables.EarlyReceipts, row => new EarlyReceiptCopy(
            row.GetFieldValue<byte[]>(0), (DeliveryState)row.GetInt32(1), row.GetInt64(2), row.GetInt64(3))))
        .Concat(Packed(BackupKind.Spending, BackupTables.Spending, row => new SpendingCopy(
            row.GetString(0), row.GetString(1), row.GetInt64(2))));

    private IEnumerable<BackupFrame> Entries(BackupKind kind, string sql)
    {
        using var rows = _session.Rows(sql);
        while (rows.Read()) yield return new BackupFrame(kind, rows.GetFieldValue<byte[]>(0));
    }

    private IEnumerable<BackupFrame> Packed<T>(BackupKind kind, string sql, Func<SqliteDataReader, T> read)
        where T : class
    {
        using var rows = _session.Rows(sql);
        while (rows.Read()) yield return new BackupFrame(kind, RecordFormat.Pack(read(rows)));
    }

    private FarmerCopy Farmer(SqliteDataReader row)
    {
        var id = row.GetInt64(0);
        return new FarmerCopy
        {
            Key = KeyFrom(row.GetFieldValue<byte[]>(1)),
            Version = row.GetInt64(2),
            Number = row.GetFieldValue<byte[]>(3),
            Record = row.GetFieldValue<byte[]>(4),
            Due = row.IsDBNull(5) ? null : row.GetInt64(5),
            Group = row.IsDBNull(6) ? null : row.GetInt32(6),
            ConcernSince = row.IsDBNull(7) ? null : row.GetInt64(7),
            Seen = Each(BackupTables.Seen, id, one => new SeenCopy(one.GetFieldValue<byte[]>(0), one.GetInt64(1))),
            Answers = Each(BackupTables.Answers, id, one =>
                new AnswerCopy(one.GetFieldValue<byte[]>(0), one.GetInt64(1), one.GetFieldValue<byte[]>(2))),
            Outbox = Each(BackupTables.Outbox, id, one => new OutboxCopy(
                one.GetString(0), one.GetString(1), (Priority)one.GetInt32(2), one.GetInt64(3), one.GetInt32(4),
                one.GetFieldValue<byte[]>(5))),
            Sent = Each(BackupTables.Sent, id, one => new SentCopy(one.GetInt64(0), one.GetFieldValue<byte[]>(1))),
        };
    }

    private static FarmerKey KeyFrom(byte[] hash) => new(Convert.ToHexStringLower(hash));

    private List<T> Each<T>(string sql, long farmer, Func<SqliteDataReader, T> read)
    {
        var all = new List<T>();
        using var rows = _session.Rows(sql, farmer);
        while (rows.Read()) all.Add(read(rows));
        return all;
    }
}
