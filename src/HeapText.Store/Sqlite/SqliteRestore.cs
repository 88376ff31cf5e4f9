using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using Microsoft.Data.Sqlite;

namespace HeapText.Store.Sqlite;

/// <summary>Fills a database beside the store's, and puts it in the store's place once it is whole and on disk: until
/// then the store stays as it was, whatever happens.</summary>
/// <remarks>The caller makes sure that no service has the folder.</remarks>
internal sealed class SqliteRestore : IBackupTarget
{
    private const int StepsTogether = 50_000;
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(3);
    private readonly string _store;
    private readonly string _beside;
    private readonly NumberVault _vault;
    private readonly long _takenAt;
    private readonly long _number;
    private Session? _session;
    private int _steps;

    /// <param name="folder">The data folder; it is there.</param>
    /// <param name="vault">The keys of the store.</param>
    /// <param name="takenAt">When the backup was taken. [ms]</param>
    /// <param name="number">See <see cref="FarmerCopy.PutBack"/>.</param>
    public SqliteRestore(string folder, NumberVault vault, long takenAt, long number)
    {
        _store = Path.Combine(folder, SqliteStore.FileName);
        _beside = _store + ".restoring";
        _vault = vault;
        _takenAt = takenAt;
        _number = number;
    }

    public ValueTask<bool> HoldsRecords(CancellationToken cancel)
    {
        if (!File.Exists(_store)) return ValueTask.FromResult(false);
        try
        {
            using var session = Session.Open(_store, LockWait);
            return ValueTask.FromResult(session.Scalar(BackupTables.Any) is not 0L);
        }
        catch (SqliteException)
        {
            // Damaged, or half made: somebody has to say that it may go.
            return ValueTask.FromResult(true);
        }
    }

    public ValueTask Clear(CancellationToken cancel)
    {
        SqliteCopy.Delete(_beside);
        SqliteCopy.MakePrivate(_beside);
        _session = Session.Open(_beside, LockWait);
        Schema.Prepare(_session, _vault);
        _session.Script("PRAGMA synchronous = OFF; BEGIN");
        return ValueTask.CompletedTask;
    }

    public ValueTask Add(BackupFrame frame)
    {
        var session = _session!;
        Put(session, frame);
        if (++_steps % StepsTogether == 0) session.Script("COMMIT; BEGIN");
        return ValueTask.CompletedTask;
    }

    public ValueTask Finish()
    {
        _session!.Script("COMMIT; PRAGMA synchronous = FULL; PRAGMA wal_checkpoint(TRUNCATE);");
        Close();
        using (var file = new FileStream(_beside, FileMode.Open, FileAccess.ReadWrite)) file.Flush(flushToDisk: true);
        RetireOld();
        File.Move(_beside, _store, overwrite: true);
        return ValueTask.CompletedTask;
    }

    public ValueTask DisposeAsync()
    {
        Close();
        SqliteCopy.Delete(_beside);
        return ValueTask.CompletedTask;
    }

    // What the old store's log holds must never be applied to the new one.
    private void RetireOld()
    {
        if (!File.Exists(_store)) return;
        try
        {
            using var old = Session.Open(_store, LockWait);
            old.Script("PRAGMA wal_checkpoint(TRUNCATE);");
        }
        catch (SqliteException)
        {
            // Damaged: its log is of no use either.
            File.Delete(_store + "-wal");
        }
        if (File.Exists(_store + "-wal"))
            throw new BackupFaultException(
                "Another program has the store open, so nothing was changed. Stop it, and restore again.");
        File.Delete(_store + "-shm");
    }

    private void Close()
    {
        _session?.Dispose();
        _session = null;
    }

    private void Put(Session session, BackupFrame frame)
    {
        switch (frame.Kind)
        {
            case BackupKind.Farmer:
                Put(session, RecordFormat.Unpack<FarmerCopy>(frame.Packed).PutBack(_takenAt, _number));
                break;
            case BackupKind.Group:
                session.Run(Tables.Groups.Put, RecordFormat.Unpack<Group>(frame.Packed).Code, frame.Packed);
                break;
            case BackupKind.OwnWord:
                var word = RecordFormat.Unpack<OwnWord>(frame.Packed);
                session.Run(Tables.OwnWords.Put, word.District, word.Word, frame.Packed);
                break;
            case BackupKind.Audit:
                session.Run(Tables.Audits.Add, frame.Packed);
                break;
            case BackupKind.SetAside:
                if (IdOf(session, RecordFormat.Unpack<SetAsideEntry>(frame.Packed).Key) is { } farmer)
                    session.Run(Tables.SetAside.Add, farmer, frame.Packed);
                break;
            case BackupKind.Reference:
                var reference = RecordFormat.Unpack<ReferenceCopy>(frame.Packed);
                if (IdOf(session, reference.Key) is { } of)
                    session.Run(
                        Tables.References.Put, reference.Mark, of, reference.Tail, reference.Part, reference.At);
                break;
            case BackupKind.EarlyReceipt:
                var early = RecordFormat.Unpack<EarlyReceiptCopy>(frame.Packed);
                session.Run(Tables.EarlyReceipts.Put, early.Mark, (int)early.State, early.StateAt, early.At, false);
                break;
            case BackupKind.Spending:
                var spent = RecordFormat.Unpack<SpendingCopy>(frame.Packed);
                session.Run(Tables.Spending.Add, spent.Day, spent.Line, spent.Segments);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(frame));
        }
    }

    private static void Put(Session session, FarmerCopy farmer)
    {
        if (session.Scalar(
            BackupTables.AddFarmer, Convert.FromHexString(farmer.Key.Hash), farmer.Version, farmer.Number,
            farmer.Record, farmer.Due, farmer.Group, farmer.ConcernSince) is not long id)
            return;
        foreach (var seen in farmer.Seen) session.Run(Tables.Seen.Put, id, seen.Mark, seen.At);
        foreach (var answer in farmer.Answers)
            session.Run(Tables.Answers.Put, id, answer.Mark, answer.At, answer.Screen);
        for (var i = 0; i < farmer.Outbox.Count; i++)
        {
            var message = farmer.Outbox[i];
            session.Run(
                BackupTables.AddToOutbox, id, message.Id, message.Line, (int)message.Priority, message.NotBefore,
                message.Tries, i == 0 ? message.NotBefore : null, message.Message);
        }
        foreach (var sent in farmer.Sent)
            session.Run(
                Tables.Sent.Put, id, RecordFormat.Unpack<SentEntry>(sent.Entry).Tail, sent.At, sent.Entry);
    }

    private static long? IdOf(Session session, FarmerKey key) =>
        session.Scalar(BackupTables.FarmerId, Convert.FromHexString(key.Hash)) as long?;
}
