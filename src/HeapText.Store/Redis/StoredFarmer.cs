using System.Buffers.Binary;
using HeapText.Store.Numbers;

namespace HeapText.Store.Redis;

/// <summary>A farmer as one string: version (8 bytes, big-endian), sealed number, packed record.</summary>
internal static class StoredFarmer
{
    private const int VersionLength = 8;

    /// <summary>Length of what stands before the record. [bytes]</summary>
    public const int HeadLength = VersionLength + NumberVault.SealedLength;

    /// <summary>The bytes a stored farmer of this version begins with; empty for version 0, which is none.</summary>
    public static byte[] VersionBytes(long version)
    {
        if (version == 0) return [];
        var bytes = new byte[VersionLength];
        BinaryPrimitives.WriteInt64BigEndian(bytes, version);
        return bytes;
    }

    public static byte[] Join(long version, byte[] sealedNumber, byte[] record) =>
        [.. VersionBytes(version), .. sealedNumber, .. record];

    public static long Version(byte[] stored) => BinaryPrimitives.ReadInt64BigEndian(stored);

    public static ReadOnlySpan<byte> SealedNumber(byte[] stored) =>
        stored.AsSpan(VersionLength, NumberVault.SealedLength);

    public static ReadOnlyMemory<byte> Record(byte[] stored) => stored.AsMemory(HeadLength);
}
