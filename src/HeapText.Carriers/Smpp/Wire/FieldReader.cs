using System.Buffers.Binary;
using System.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Takes the fields of one PDU's body, one after the other.</summary>
/// <remarks>Strings are read as Latin-1, so that no octet is lost. A field that does not end within the body is a
/// <see cref="PduFaultException"/> that is not fatal.</remarks>
internal ref struct FieldReader(CommandId command, uint sequence, ReadOnlyMemory<byte> body)
{
    private const int TlvHeader = 4;
    private ReadOnlyMemory<byte> _rest = body;

    public readonly bool IsAtEnd => _rest.IsEmpty;

    /// <summary>True at the end, or where a tag stands in place of a name, whose characters are printable.</summary>
    public readonly bool IsAtTlvs => _rest.IsEmpty || _rest.Span[0] is > 0 and < (byte)' ';

    public byte Byte() => Octets(1).Span[0];

    public ReadOnlyMemory<byte> Octets(int count)
    {
        if (count > _rest.Length) throw Fault("a field goes past the end", CommandStatus.InvalidMessageLength);
        var taken = _rest[..count];
        _rest = _rest[count..];
        return taken;
    }

    /// <summary>A C-octet string, without its closing NUL.</summary>
    public string Text()
    {
        var end = _rest.Span.IndexOf((byte)0);
        if (end < 0) throw Fault("a string does not end", CommandStatus.InvalidMessageLength);
        return Encoding.Latin1.GetString(Octets(end + 1).Span[..end]);
    }

    public Address Address() => new(Byte(), Byte(), Text());

    /// <summary>All that is left, as optional parameters.</summary>
    public Tlvs Tlvs()
    {
        if (IsAtEnd) return Wire.Tlvs.None;
        var all = new List<Tlv>();
        while (!IsAtEnd)
        {
            if (_rest.Length < TlvHeader) throw Fault("half a TLV", CommandStatus.InvalidOptionalPart);
            var header = Octets(TlvHeader).Span;
            var length = BinaryPrimitives.ReadUInt16BigEndian(header[2..]);
            if (length > _rest.Length) throw Fault("a TLV goes past the end", CommandStatus.InvalidOptionalPart);
            all.Add(new Tlv((TlvTag)BinaryPrimitives.ReadUInt16BigEndian(header), Octets(length)));
        }

        return new Tlvs(all);
    }

    private readonly PduFaultException Fault(string what, CommandStatus status) =>
        new($"{command}: {what}.") { CommandId = command, Sequence = sequence, Status = status };
}
