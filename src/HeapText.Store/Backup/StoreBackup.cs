using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Redis;
using HeapText.Store.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Backup;

/// <summary>The whole state of a store, out into a file and back in, from either home into either.</summary>
/// <remarks>
/// Every member throws <see cref="ArgumentException"/> for wrong settings, <see cref="BackupFaultException"/> and
/// <see cref="InvalidDataException"/> for what cannot be read or must not be overwritten,
/// <see cref="InvalidOperationException"/> for a server that could lose what it acknowledges, and
/// <see cref="StoreUnavailableException"/> for a store that cannot be reached.
/// </remarks>
public static class StoreBackup
{
    /// <summary>Writes a backup, beside a running service or not. The file is there only once it is whole.</summary>
    /// <param name="options">The store.</param>
    /// <param name="file">The file; a backup of that name is replaced, any other file is not.</param>
    /// <param name="time">The clock of the store.</param>
    /// <param name="farmers">Told now and then how many farmers are done.</param>
    /// <param name="cancel">Ends it early, without a file.</param>
    public static async Task<BackupSummary> Take(
        StoreOptions options, string file, TimeProvider time, Action<long>? farmers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        return await Reach(async () =>
        {
            var takenAt = Instant.FromUnixTimeMilliseconds(time.GetUtcNow().ToUnixTimeMilliseconds());
            var vault = await VaultToRead(options);
            using var writer = BackupWriter.Begin(file, new BackupHeader(vault.Fingerprint, takenAt));
            await using var source = await Source(options, file, vault, takenAt);
            await foreach (var frame in source.Read(cancel))
            {
                writer.Add(frame);
                if (frame.Kind == BackupKind.Farmer) Tell(farmers, writer.Count(BackupKind.Farmer));
            }
            return writer.Finish(vault);
        });
    }

    /// <summary>Puts a backup back. Nothing is changed before the whole file was checked.</summary>
    /// <param name="options">The store. No service may be using it.</param>
    /// <param name="file">The backup.</param>
    /// <param name="replace">Whether what the store holds may go.</param>
    /// <param name="time">The real clock.</param>
    /// <param name="farmers">Told now and then how many farmers are done.</param>
    /// <param name="cancel">Ends it early: an embedded store is then as it was, one on a server must be restored
    /// again.</param>
    public static async Task<BackupSummary> Restore(
        StoreOptions options, string file, bool replace, TimeProvider time, Action<long>? farmers,
        CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        return await Reach(async () =>
        {
            var vault = await StoreFactory.VaultGiven(options);
            using var reader = BackupReader.Open(file, vault);
            var number = time.GetUtcNow().ToUnixTimeSeconds();
            await using var target = await Target(options, vault, reader.Header.TakenAt, number);
            if (await target.HoldsRecords(cancel) && !replace)
                throw new BackupFaultException(
                    "The store holds records, so nothing was changed. Add --replace to lose them, or name another.");
            await target.Clear(cancel);
            var done = 0L;
            foreach (var frame in reader.Frames())
            {
                cancel.ThrowIfCancellationRequested();
                await target.Add(frame);
                if (frame.Kind == BackupKind.Farmer) Tell(farmers, ++done);
            }
            await target.Finish();
            return reader.Summary();
        });
    }

    private static void Tell(Action<long>? farmers, long done)
    {
        const long every = 10_000;
        if (done % every == 0) farmers?.Invoke(done);
    }

    private static async ValueTask<NumberVault> VaultToRead(StoreOptions options) => options.Connection.Length > 0
        ? await StoreFactory.VaultGiven(options)
        : await StoreFactory.VaultBeside(options);

    private static async ValueTask<IBackupSource> Source(
        StoreOptions options, string file, NumberVault vault, Instant takenAt)
    {
        if (options.Connection.Length == 0) return SqliteCopy.Take(options.DataDirectory, file + ".copy", vault);
        var store = await RedisStore.Open(options, vault, NullLogger.Instance, TimeProvider.System);
        return new RedisCopy(store, new Keys(Keys.Prefix), takenAt.ToUnixTimeMilliseconds());
    }

    private static async ValueTask<IBackupTarget> Target(
        StoreOptions options, NumberVault vault, Instant takenAt, long number)
    {
        var at = takenAt.ToUnixTimeMilliseconds();
        if (options.Connection.Length == 0)
        {
            StoreFactory.MakePrivate(options.DataDirectory);
            return new SqliteRestore(options.DataDirectory, vault, at, number);
        }
        var server = await RedisStore.Connect(options, "heaptext-restore", NullLogger.Instance);
        return new RedisRestore(server, new Keys(Keys.Prefix), vault, at, number);
    }

    private static async Task<T> Reach<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception e) when (e is RedisException or TimeoutException)
        {
            throw new StoreUnavailableException("The store's server is gone, stalled or refuses.", e);
        }
        catch (Microsoft.Data.Sqlite.SqliteException e)
        {
            throw new StoreUnavailableException("The store's file cannot be read or written.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BackupFaultException($"The backup failed: {e.Message}", e);
        }
    }
}
