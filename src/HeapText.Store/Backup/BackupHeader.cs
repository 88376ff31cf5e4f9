using System.Buffers.Binary;
using NodaTime;

namespace HeapText.Store.Backup;

/// <summary>How a backup begins: "HEAPTEXT", the version of the format (1 byte), the fingerprint of the secret (16
/// bytes), when it was taken (8 bytes, milliseconds since 1970-01-01T00:00Z).</summary>
/// <remarks>
/// Frames follow: kind (1 byte), length (4 bytes), that many bytes. The last is of <see cref="BackupKind.End"/> and
/// holds kind (1 byte) and count (8 bytes) of each kind. Then the SHA-256 of all before (32 bytes), and the
/// HMAC-SHA-256 of that under a key of the secret (32 bytes). Whole numbers are big-endian.
/// </remarks>
internal sealed record BackupHeader(byte[] Fingerprint, Instant TakenAt)
{
    /// <summary>Length. [bytes]</summary>
    public const int Length = MagicLength + 1 + FingerprintLength + sizeof(long);

    /// <summary>Length of what stands before a frame's bytes.</summary>
    public const int FrameHeadLength = 1 + sizeof(int);

    /// <summary>Length of one count in the last frame.</summary>
    public const int CountLength = 1 + sizeof(long);

    /// <summary>Length of the digest, and of its signature.</summary>
    public const int DigestLength = 32;

    /// <summary>The version written.</summary>
    public const byte Version = 1;

    private const int MagicLength = 8;
    private const int FingerprintLength = 16;

    private static ReadOnlySpan<byte> Magic => "HEAPTEXT"u8;

    /// <summary>True when the bytes begin as a backup does.</summary>
    public static bool IsBackup(ReadOnlySpan<byte> start) => start.StartsWith(Magic);

    /// <summary>The header as bytes.</summary>
    public byte[] Bytes()
    {
        var bytes = new byte[Length];
        Magic.CopyTo(bytes);
        bytes[MagicLength] = Version;
        Fingerprint.CopyTo(bytes, MagicLength + 1);
        BinaryPrimitives.WriteInt64BigEndian(
            bytes.AsSpan(MagicLength + 1 + FingerprintLength), TakenAt.ToUnixTimeMilliseconds());
        return bytes;
    }

    /// <summary>The header back.</summary>
    /// <exception cref="BackupFaultException">It is none, or a newer version wrote it.</exception>
    public static BackupHeader From(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < Length || !IsBackup(bytes))
            throw new BackupFaultException("This is no backup of HeapText, or only the start of one.");
        if (bytes[MagicLength] != Version)
            throw new BackupFaultException(
                $"The backup has format {bytes[MagicLength]}; this version knows {Version}. Install the newer one.");
        return new BackupHeader(
            bytes.Slice(MagicLength + 1, FingerprintLength).ToArray(),
            Instant.FromUnixTimeMilliseconds(
                BinaryPrimitives.ReadInt64BigEndian(bytes[(MagicLength + 1 + FingerprintLength)..])));
    }
}
