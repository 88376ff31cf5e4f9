using System.Text;
using HeapText.Dialog.Ports;

namespace HeapText.Store.Redis;

/// <summary>What a reference leads to: the farmer (16 bytes), the part (1 byte), the tail of the message's
/// id.</summary>
internal readonly record struct ReferenceEntry(FarmerKey Key, int Part, string Tail)
{
    private const int MemberLength = 16;

    public static ReferenceEntry From(byte[] stored) => new(
        Keys.FarmerOf(stored[..MemberLength]), stored[MemberLength],
        Encoding.UTF8.GetString(stored.AsSpan(MemberLength + 1)));

    public byte[] Bytes() => [.. Keys.Member(Key), (byte)Part, .. Encoding.UTF8.GetBytes(Tail)];
}
