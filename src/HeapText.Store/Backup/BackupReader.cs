using System.Buffers.Binary;
using System.Security.Cryptography;
using HeapText.Store.Numbers;

namespace HeapText.Store.Backup;

/// <summary>Reads a backup: once through to see that it is whole, then frame by frame.</summary>
internal sealed class BackupReader : IDisposable
{
    private const int BufferSize = 1 << 16;
    private const int EndLength = 2 * BackupHeader.DigestLength;
    private readonly FileStream _stream;
    private readonly long[] _counts = new long[BackupKinds.Names.Count + 1];

    private BackupReader(FileStream stream, BackupHeader header)
    {
        _stream = stream;
        Header = header;
    }

    public BackupHeader Header { get; }

    /// <summary>Opens a backup that is whole and was made under this secret.</summary>
    /// <exception cref="BackupFaultException">It is none, is damaged, or needs another secret.</exception>
    public static BackupReader Open(string file, NumberVault vault)
    {
        FileStream? stream = null;
        try
        {
            stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read, BufferSize);
            var head = new byte[BackupHeader.Length];
            var length = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            var reader = new BackupReader(stream, BackupHeader.From(head.AsSpan(0, length)));
            stream = null;
            try
            {
                reader.Check(vault);
                return reader;
            }
            catch
            {
                reader.Dispose();
                throw;
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BackupFaultException($"The backup cannot be read: {e.Message}", e);
        }
        finally
        {
            stream?.Dispose();
        }
    }

    /// <summary>What it holds.</summary>
    public BackupSummary Summary() => Summary(Header, _stream.Length, _counts);

    /// <summary>Every record, in the order of the file.</summary>
    public IEnumerable<BackupFrame> Frames()
    {
        _stream.Position = BackupHeader.Length;
        while (Next() is { Kind: not BackupKind.End } frame) yield return frame;
    }

    public void Dispose() => _stream.Dispose();

    internal static BackupSummary Summary(BackupHeader header, long bytes, long[] counts) => new(
        header.TakenAt, Convert.ToHexStringLower(header.Fingerprint), bytes,
        BackupKinds.Names.ToDictionary(kind => kind.Value, kind => counts[(int)kind.Key]));

    private void Check(NumberVault vault)
    {
        var (digest, signature) = Digests();
        if (!Header.Fingerprint.AsSpan().SequenceEqual(vault.Fingerprint))
            throw new BackupFaultException(
                "Store:Secret is not the one this backup was made under: its numbers could not be read. Set the secret "
                + $"with fingerprint {Convert.ToHexStringLower(Header.Fingerprint)} (given: "
                + $"{Convert.ToHexStringLower(vault.Fingerprint)}), or put that store's store.key into the folder.");
        if (!CryptographicOperations.FixedTimeEquals(signature, vault.SignatureOf(digest)))
            throw new BackupFaultException(
                "The backup was altered after it was made. Nothing was changed; take another backup.");
        CheckCounts();
    }

    /// <summary>The digest of the file, which it must hold itself, and its signature.</summary>
    private (byte[] Digest, byte[] Signature) Digests()
    {
        var left = _stream.Length - EndLength;
        if (left < BackupHeader.Length) throw Damaged();
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[BufferSize];
        for (_stream.Position = 0; left > 0;)
        {
            var length = _stream.Read(buffer, 0, (int)Math.Min(left, buffer.Length));
            if (length == 0) throw Damaged();
            hash.AppendData(buffer, 0, length);
            left -= length;
        }
        var digest = hash.GetHashAndReset();
        var end = new byte[EndLength];
        _stream.ReadExactly(end);
        if (!end.AsSpan(0, digest.Length).SequenceEqual(digest)) throw Damaged();
        return (digest, end[digest.Length..]);
    }

    private void CheckCounts()
    {
        foreach (var frame in Frames())
        {
            if ((int)frame.Kind >= _counts.Length)
                throw new BackupFaultException(
                    "The backup holds records that this version does not know. Install the newer version.");
            _counts[(int)frame.Kind]++;
        }
        if (_stream.Position != _stream.Length - EndLength) throw Damaged();
    }

    private BackupFrame Next()
    {
        Span<byte> head = stackalloc byte[BackupHeader.FrameHeadLength];
        _stream.ReadExactly(head);
        var length = BinaryPrimitives.ReadInt32BigEndian(head[1..]);
        if (length < 0 || length > _stream.Length - _stream.Position) throw Damaged();
        var packed = new byte[length];
        _stream.ReadExactly(packed);
        return new BackupFrame((BackupKind)head[0], packed);
    }

    private static BackupFaultException Damaged() => new(
        "The backup is damaged or cut short. Nothing was changed; take another backup.");
}
