using System.Buffers.Binary;
using System.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Puts the fields of one PDU one after the other.</summary>
internal ref struct FieldWriter(Span<byte> room)
{
    private readonly Span<byte> _room = room;

    /// <summary>Octets written.</summary>
    public int Length { get; private set; }

    public void Number(uint value)
    {
        BinaryPrimitives.WriteUInt32BigEndian(_room[Length..], value);
        Length += sizeof(uint);
    }

    public void Short(ushort value)
    {
        BinaryPrimitives.WriteUInt16BigEndian(_room[Length..], value);
        Length += sizeof(ushort);
    }

    public void Byte(byte value) => _room[Length++] = value;

    public void Octets(ReadOnlySpan<byte> value)
    {
        value.CopyTo(_room[Length..]);
        Length += value.Length;
    }

    /// <summary>A C-octet string.</summary>
    /// <param name="value">The characters, none of them NUL or above U+00FF.</param>
    /// <param name="most">The most there may be, without the closing NUL.</param>
    /// <param name="name">The standard's name of the field.</param>
    /// <exception cref="ArgumentException">It is too long, or holds another character.</exception>
    public void Text(string value, int most, string name)
    {
        if (value.Length > most) throw new ArgumentException($"{name} has more than {most} characters.", name);
        if (value.AsSpan().ContainsAnyExceptInRange('\u0001', '\u00ff'))
            throw new ArgumentException($"{name} has a character that cannot be sent.", name);
        Length += Encoding.Latin1.GetBytes(value, _room[Length..]);
        Byte(0);
    }

    public void Address(Address value, int most, string name)
    {
        Byte(value.Ton);
        Byte(value.Npi);
        Text(value.Value, most, name);
    }

    public void Tlvs(Tlvs tlvs)
    {
        foreach (var (tag, value) in tlvs.All)
        {
            Short((ushort)tag);
            Short((ushort)value.Length);
            Octets(value.Span);
        }
    }
}
