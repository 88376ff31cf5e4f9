using System.Buffers.Binary;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>Long texts as the parts in which a phone's network hands them over.</summary>
internal static class LongMessages
{
    public static readonly Address Farmer = new(1, 1, "99910000001");
    private static readonly Address Office = new(3, 0, "4030");

    public static IReadOnlyList<MessageBody> Of(
        string text, ushort reference, PartKind kind = PartKind.ShortReference, Address? from = null)
    {
        var shared = new MessageBody { Source = from ?? Farmer, Destination = Office };
        var way = kind == PartKind.Sar ? LongTexts.Sar : LongTexts.Headers;
        var parts = new Submission(LongTexts: way).Messages(text, shared, reference);
        return kind == PartKind.LongReference ? [.. parts.Select(part => WithLongReference(part, reference))] : parts;
    }

    /// <summary>A part with any octets.</summary>
    public static MessageBody Part(byte reference, byte total, byte number, byte[] octets, byte coding = 0) => new()
    {
        Source = Farmer,
        Destination = Office,
        EsmClass = EsmClass.HasHeader,
        DataCoding = coding,
        ShortMessage = (byte[])
            [.. UserData.HeaderOf(new PartOf(PartKind.ShortReference, reference, total, number)), .. octets],
    };

    private static MessageBody WithLongReference(MessageBody part, ushort reference)
    {
        if (!EsmClass.IsHeaded(part.EsmClass)) return part;
        var octets = part.ShortMessage.Span;
        byte[] header = [6, 8, 4, 0, 0, octets[4], octets[5]];
        BinaryPrimitives.WriteUInt16BigEndian(header.AsSpan(3), reference);
        return part with { ShortMessage = (byte[])[.. header, .. octets[6..]] };
    }
}
