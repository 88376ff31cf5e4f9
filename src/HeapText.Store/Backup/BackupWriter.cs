using System.Buffers.Binary;
using System.Security.Cryptography;
using HeapText.Store.Numbers;

namespace HeapText.Store.Backup;

/// <summary>Writes a backup beside its name, and gives it the name once it is whole and on disk.</summary>
internal sealed class BackupWriter : IDisposable
{
    private const int BufferSize = 1 << 16;
    private readonly string _file;
    private readonly BackupHeader _header;
    private readonly FileStream _stream;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly long[] _counts = new long[BackupKinds.Names.Count + 1];

    private BackupWriter(string file, BackupHeader header, FileStream stream)
    {
        _file = file;
        _header = header;
        _stream = stream;
    }

    /// <summary>Begins FILE.part, for this user alone.</summary>
    /// <exception cref="BackupFaultException">The name is that of another file, or cannot be written.</exception>
    public static BackupWriter Begin(string file, BackupHeader header)
    {
        try
        {
            RefuseOthers(file);
            var settings = new FileStreamOptions
            {
                Mode = FileMode.Create,
                Access = FileAccess.Write,
                BufferSize = BufferSize,
            };
            if (!OperatingSystem.IsWindows()) settings.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            var writer = new BackupWriter(file, header, new FileStream(PartOf(file), settings));
            writer.Write(header.Bytes());
            return writer;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BackupFaultException($"The backup cannot be written: {e.Message} Name another file.", e);
        }
    }

    /// <summary>How many records of a kind were added.</summary>
    public long Count(BackupKind kind) => _counts[(int)kind];

    /// <summary>Adds a record.</summary>
    public void Add(BackupFrame frame)
    {
        Frame(frame.Kind, frame.Packed);
        _counts[(int)frame.Kind]++;
    }

    /// <summary>Ends the file, brings it to disk, and gives it its name.</summary>
    public BackupSummary Finish(NumberVault vault)
    {
        Frame(BackupKind.End, Counts());
        var digest = _hash.GetHashAndReset();
        _stream.Write(digest);
        _stream.Write(vault.SignatureOf(digest));
        _stream.Flush(flushToDisk: true);
        var bytes = _stream.Length;
        _stream.Dispose();
        File.Move(PartOf(_file), _file, overwrite: true);
        return BackupReader.Summary(_header, bytes, _counts);
    }

    /// <summary>Closes it; one that is not whole is deleted.</summary>
    public void Dispose()
    {
        _hash.Dispose();
        _stream.Dispose();
        File.Delete(PartOf(_file));
    }

    private static string PartOf(string file) => file + ".part";

    // A slip of the hand must not cost a file that is no backup.
    private static void RefuseOthers(string file)
    {
        if (!File.Exists(file)) return;
        Span<byte> start = stackalloc byte[BackupHeader.Length];
        using var present = File.OpenRead(file);
        var length = present.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        if (length > 0 && !BackupHeader.IsBackup(start[..length]))
            throw new BackupFaultException($"'{file}' is there already and is no backup. Name another file.");
    }

    private byte[] Counts()
    {
        var packed = new byte[(_counts.Length - 1) * BackupHeader.CountLength];
        for (var kind = 1; kind < _counts.Length; kind++)
        {
            var count = packed.AsSpan((kind - 1) * BackupHeader.CountLength, BackupHeader.CountLength);
            count[0] = (byte)kind;
            BinaryPrimitives.WriteInt64BigEndian(count[1..], _counts[kind]);
        }
        return packed;
    }

    private void Frame(BackupKind kind, byte[] packed)
    {
        Span<byte> head = stackalloc byte[BackupHeader.FrameHeadLength];
        head[0] = (byte)kind;
        BinaryPrimitives.WriteInt32BigEndian(head[1..], packed.Length);
        Write(head);
        Write(packed);
    }

    private void Write(ReadOnlySpan<byte> bytes)
    {
        _hash.AppendData(bytes);
        _stream.Write(bytes);
    }
}
