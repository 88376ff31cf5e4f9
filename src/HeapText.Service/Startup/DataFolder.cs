using HeapText.Service.Practice;

namespace HeapText.Service.Startup;

/// <summary>The folder of the embedded store, held by one service at a time.</summary>
internal sealed class DataFolder : IDisposable
{
    private const string LockName = "service.lock";

    // Only files this program makes; anything else in the folder is left alone.
    private const string Key = "store.key";
    private const string Store = "heaptext.db";
    private const string Journal = PracticeJournal.FileName;
    private static readonly string[] StoreFiles = [Store, Store + "-wal", Store + "-shm", Key];
    private static readonly string[] JournalFiles = [Journal, Journal + "-wal", Journal + "-shm"];

    private readonly string _path;
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held)
    {
        _path = path;
        _lock = held;
    }

    /// <summary>Takes the folder; makes it where there is none, for this user alone.</summary>
    /// <exception cref="SettingsFaultsException">Another service holds it, or it cannot be written.</exception>
    public static DataFolder Take(string path)
    {
        try
        {
            MakePrivate(path);
            return new DataFolder(path, Hold(path));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SettingsFaultsException(
                [$"Store:DataDirectory: {path} cannot be used as a folder ({fault.Message}). "
                    + "Name another with --data."], fault);
        }
    }

    /// <summary>True when practice mode did not make the store here: it has no journal beside it, or its key is kept
    /// elsewhere.</summary>
    public bool HoldsRealRecords(bool secretIsGiven) =>
        File.Exists(At(Store)) && (!File.Exists(At(Journal)) || !(secretIsGiven || File.Exists(At(Key))));

    /// <summary>Deletes the practice records.</summary>
    public void WipeJournal()
    {
        foreach (var file in JournalFiles) File.Delete(At(file));
    }

    /// <summary>Deletes the store and then the practice records, which say whether the store is whole.</summary>
    public void WipeAll()
    {
        foreach (var file in StoreFiles) File.Delete(At(file));
        WipeJournal();
    }

    private string At(string file) => Path.Combine(_path, file);

    private static void MakePrivate(string path)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(
            path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    private static FileStream Hold(string path)
    {
        try
        {
            return new FileStream(
                Path.Combine(path, LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException held)
        {
            throw new SettingsFaultsException(
                [$"Store:DataDirectory: {path} is in use by another service. Stop that one, or name another "
                    + "with --data."], held);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _lock.Dispose();
}
