using System.Buffers.Binary;
using System.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>The optional parameters of a PDU, in order. A value of the wrong length reads as absent; of two with one
/// tag the first is read.</summary>
internal sealed class Tlvs(IReadOnlyList<Tlv> all)
{
    public static readonly Tlvs None = new([]);

    public IReadOnlyList<Tlv> All { get; } = all;

    public ReadOnlyMemory<byte>? MessagePayload => Find(TlvTag.MessagePayload);

    /// <summary>Without its closing NUL, whether it had one or not.</summary>
    public string? ReceiptedMessageId => Find(TlvTag.ReceiptedMessageId) is { } value ? TextOf(value.Span) : null;

    public MessageState? MessageState => (MessageState?)Byte(TlvTag.MessageState);

    public NetworkError? NetworkError => Find(TlvTag.NetworkErrorCode) is { Length: 3 } value
        ? new NetworkError(value.Span[0], BinaryPrimitives.ReadUInt16BigEndian(value.Span[1..]))
        : null;

    public ushort? SarReference => Short(TlvTag.SarReference);

    public byte? SarTotal => Byte(TlvTag.SarTotal);

    public byte? SarPart => Byte(TlvTag.SarPart);

    public ushort? UserMessageReference => Short(TlvTag.UserMessageReference);

    public byte? InterfaceVersion => Byte(TlvTag.InterfaceVersion);

    public UssdServiceOp? UssdServiceOp => (UssdServiceOp?)Byte(TlvTag.UssdServiceOp);

    public ItsSessionInfo? ItsSessionInfo => Find(TlvTag.ItsSessionInfo) is { Length: 2 } value
        ? Wire.ItsSessionInfo.Of(value.Span)
        : null;

    /// <summary>These and one more.</summary>
    public Tlvs With(TlvTag tag, ReadOnlyMemory<byte> value) => new([.. All, new Tlv(tag, value)]);

    /// <inheritdoc cref="With(TlvTag, ReadOnlyMemory{byte})"/>
    public Tlvs With(TlvTag tag, byte value) => With(tag, new[] { value });

    /// <inheritdoc cref="With(TlvTag, ReadOnlyMemory{byte})"/>
    public Tlvs With(TlvTag tag, ushort value)
    {
        var octets = new byte[sizeof(ushort)];
        BinaryPrimitives.WriteUInt16BigEndian(octets, value);
        return With(tag, octets);
    }

    /// <summary>These and one more, as a C-octet string.</summary>
    public Tlvs With(TlvTag tag, string value) => With(tag, Encoding.Latin1.GetBytes(value + '\0'));

    private ReadOnlyMemory<byte>? Find(TlvTag tag)
    {
        foreach (var one in All)
            if (one.Tag == tag) return one.Value;
        return null;
    }

    private byte? Byte(TlvTag tag) => Find(tag) is { Length: 1 } value ? value.Span[0] : null;

    private ushort? Short(TlvTag tag) =>
        Find(tag) is { Length: 2 } value ? BinaryPrimitives.ReadUInt16BigEndian(value.Span) : null;

    private static string TextOf(ReadOnlySpan<byte> value)
    {
        var end = value.IndexOf((byte)0);
        return Encoding.Latin1.GetString(end < 0 ? value : value[..end]);
    }
}
