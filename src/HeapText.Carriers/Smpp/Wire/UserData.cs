using System.Buffers.Binary;
using HeapText.Dialog.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>A message's octets, with what its user data header says told apart from the text.</summary>
/// <param name="Octets">The text's.</param>
/// <param name="Alphabet">How they stand for characters.</param>
/// <param name="Languages">National languages of the GSM alphabet.</param>
/// <param name="Part">Which part of a long text it is; null for a text of its own.</param>
/// <remarks>
/// Source: 3GPP TS 23.040, section 9.2.3.24, from memory: an octet with the header's length, then elements of an octet
/// identifier, an octet length and the data. A header that is cut short counts as far as it goes.
/// </remarks>
internal sealed record UserData(
    ReadOnlyMemory<byte> Octets, Alphabet Alphabet, (byte? Single, byte? Locking) Languages, PartOf? Part)
{
    private const byte ShortReference = 0x00, LongReference = 0x08;

    /// <summary>The words, decoded. Never logged.</summary>
    public string Text => TextCoding.Decode(Octets.Span, Alphabet, Languages);

    /// <summary>True when both hold the same octets of the same coding.</summary>
    public bool IsSame(UserData other) => IsSameCoding(other) && Octets.Span.SequenceEqual(other.Octets.Span);

    /// <summary>True when their octets may be joined before they are decoded.</summary>
    public bool IsSameCoding(UserData other) => Alphabet == other.Alphabet && Languages == other.Languages;

    /// <summary>Reads a message.</summary>
    /// <param name="body">The message.</param>
    /// <param name="whenDefault">What a data_coding of 0 means on the line.</param>
    public static UserData Of(MessageBody body, Alphabet whenDefault)
    {
        var octets = body.UserData;
        var alphabet = TextCoding.AlphabetOf(body.DataCoding, whenDefault);
        var sar = body.Tlvs is { SarReference: { } reference, SarTotal: { } total, SarPart: { } number }
            ? PartOf.Valid(PartKind.Sar, reference, total, number)
            : null;
        if (!EsmClass.IsHeaded(body.EsmClass) || octets.IsEmpty) return new UserData(octets, alphabet, default, sar);
        var headerLength = Math.Min(octets.Span[0] + 1, octets.Length);
        var header = octets.Span[..headerLength];
        return new UserData(
            octets[headerLength..], alphabet, Septets.LanguagesIn(header), PartIn(header) ?? sar);
    }

    /// <summary>A header that names a part, with the reference's lower 8 bits.</summary>
    public static byte[] HeaderOf(PartOf part) =>
        [5, ShortReference, 3, (byte)(part.Reference & 0xFF), part.Total, part.Number];

    private static PartOf? PartIn(ReadOnlySpan<byte> header)
    {
        for (var at = 1; at + 2 <= header.Length; at += 2 + header[at + 1])
        {
            var length = header[at + 1];
            if (at + 2 + length > header.Length) break;
            var data = header.Slice(at + 2, length);
            if (header[at] == ShortReference && length == 3)
                return PartOf.Valid(PartKind.ShortReference, data[0], data[1], data[2]);
            if (header[at] == LongReference && length == 4)
                return PartOf.Valid(
                    PartKind.LongReference, BinaryPrimitives.ReadUInt16BigEndian(data), data[2], data[3]);
        }

        return null;
    }
}
