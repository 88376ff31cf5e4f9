using HeapText.Dialog.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>How a text that takes more than one segment travels.</summary>
public enum LongTexts
{
    /// <summary>A submit_sm for each segment, with a user data header.</summary>
    Headers,

    /// <summary>A submit_sm for each segment, with the sar_* parameters.</summary>
    Sar,

    /// <summary>One submit_sm, with the whole in message_payload.</summary>
    Payload,
}

/// <summary>Makes a text into the messages it is sent as.</summary>
/// <param name="WhenDefault">What a data_coding of 0 means on the line.</param>
/// <param name="LongTexts">How a text of several segments travels.</param>
/// <remarks>
/// The segments are those of <see cref="Fit"/>, so that what a text was said to cost is what is sent. One exception: on
/// a line whose default is not the GSM alphabet, a text with a letter that this default lacks goes as UCS-2, in the
/// segments that takes.
/// </remarks>
internal sealed record Submission(Alphabet WhenDefault = Alphabet.Gsm7, LongTexts LongTexts = LongTexts.Headers)
{
    private const int MostParts = 255;

    /// <summary>The messages of a text, in order.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="shared">What all of them have: addresses, expiry, receipts.</param>
    /// <param name="reference">The number by which the phone joins them: another for each text to the same phone. A
    /// header holds its lower 8 bits.</param>
    /// <exception cref="ArgumentException">More than 255 segments.</exception>
    public IReadOnlyList<MessageBody> Messages(string text, MessageBody shared, ushort reference)
    {
        var alphabet = AlphabetFor(text);
        var coded = shared with { DataCoding = alphabet == WhenDefault ? TextCoding.Default : TextCoding.Ucs2 };
        var pieces = Pieces(text, alphabet);
        if (pieces.Count > MostParts) throw new ArgumentException("More than 255 segments.", nameof(text));
        if (pieces.Count == 1) return [coded with { ShortMessage = TextCoding.Encode(text, alphabet) }];
        if (LongTexts == LongTexts.Payload)
            return [coded with { Tlvs = coded.Tlvs.With(TlvTag.MessagePayload, TextCoding.Encode(text, alphabet)) }];
        return [.. pieces.Select((piece, i) => Part(
            coded, TextCoding.Encode(piece, alphabet),
            new PartOf(PartKind.ShortReference, reference, (byte)pieces.Count, (byte)(i + 1))))];
    }

    /// <summary>How many segments <see cref="Messages"/> makes of a text: what a line's rate and cost count.</summary>
    public int Segments(string text) => Pieces(text, AlphabetFor(text)).Count;

    private Alphabet AlphabetFor(string text) =>
        TextCoding.Holds(Alphabet.Gsm7, text) && TextCoding.Holds(WhenDefault, text) ? WhenDefault : Alphabet.Ucs2;

    private static IReadOnlyList<string> Pieces(string text, Alphabet alphabet) =>
        alphabet == Alphabet.Ucs2 ? Fit.SplitWide(text) : Fit.Split(text);

    private MessageBody Part(MessageBody coded, byte[] octets, PartOf part) => LongTexts == LongTexts.Sar
        ? coded with
        {
            ShortMessage = octets,
            Tlvs = coded.Tlvs
                .With(TlvTag.SarReference, part.Reference)
                .With(TlvTag.SarTotal, part.Total)
                .With(TlvTag.SarPart, part.Number),
        }
        : coded with
        {
            EsmClass = (byte)(coded.EsmClass | EsmClass.HasHeader),
            ShortMessage = (byte[])[.. UserData.HeaderOf(part), .. octets],
        };
}
