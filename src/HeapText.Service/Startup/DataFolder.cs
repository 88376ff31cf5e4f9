using HeapText.Service.Practice;

namespace HeapText.Service.Startup;

/// <summary>The folder of the embedded store, held by one service at a time.</summary>
internal sealed class DataFolder : IDisposable
{
    private const string LockName = "service.lock";

    // Only files this program makes; anything else in the folder is left alone.
    private static readonly string[] Own =
        ["heaptext.db", "heaptext.db-wal", "heaptext.db-shm", "store.key",
            PracticeJournal.FileName, PracticeJournal.FileName + "-wal", PracticeJournal.FileName + "-shm"];

    private readonly string _path;
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held)
    {
        _path = path;
        _lock = held;
    }

    /// <summary>Takes the folder; makes it where there is none.</summary>
    /// <exception cref="IOException">Another service holds it, or it cannot be written; the message says
    /// so.</exception>
    public static DataFolder Take(string path)
    {
        Directory.CreateDirectory(path);
        try
        {
            return new DataFolder(path, new FileStream(
                Path.Combine(path, LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException held)
        {
            throw new IOException(
                $"The data folder {path} is in use by another service. Stop that one, or name another with --data.",
                held);
        }
    }

    /// <summary>Deletes the store and the practice records.</summary>
    public void Wipe()
    {
        foreach (var file in Own) File.Delete(Path.Combine(_path, file));
    }

    /// <inheritdoc/>
    public void Dispose() => _lock.Dispose();
}
