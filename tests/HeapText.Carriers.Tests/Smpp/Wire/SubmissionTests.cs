using CsCheck;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Text;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class SubmissionTests
{
    private const int HeaderOctets = 6;
    private const string Corn = "\U0001F33D";

    private static readonly MessageBody Shared = new()
    {
        Destination = new Address(1, 1, "99910000001"),
        RegisteredDelivery = 1,
    };

    public static TheoryData<string> Texts =>
    [
        "",
        new string('a', 160),
        new string('a', 161),
        new string('a', 306),
        new string('a', 307),
        new string('a', 152) + "{" + new string('a', 20),
        new string('a', 158) + "{",
        new string('a', 159) + "{",
        new string('ọ', 70),
        new string('ọ', 71),
        new string('ọ', 66) + Corn + "ọọọ",
        string.Concat(Enumerable.Repeat(Corn, 40)),
    ];

    [Theory]
    [MemberData(nameof(Texts))]
    public void Messages_TextAtABoundary_IsCutWhereFitCutsIt(string text)
    {
        var fitting = Fit.Measure(text);
        var octetsOfUnit = fitting.Encoding == TextEncoding.Gsm7 ? 1 : 2;

        var messages = new Submission().Messages(text, Shared, 0x1207);

        var header = messages.Count == 1 ? 0 : HeaderOctets;
        Assert.Equal(fitting.SegmentUnits, messages.Select(m => (m.ShortMessage.Length - header) / octetsOfUnit));
        Assert.Equal(Fit.Split(text), messages.Select(m => UserData.Of(m, Alphabet.Gsm7).Text));
        Assert.Equal(fitting.Segments, new Submission().Segments(text));
    }

    [Fact]
    public void Messages_AnyText_GivesItBackInEveryWayOfTravel() =>
        Gen.Select(Gen.String[Gen.Char["ab{€ọ" + Corn], 0, 500], Gen.Enum<LongTexts>()).Sample((text, way) =>
        {
            var messages = new Submission(LongTexts: way).Messages(text, Shared, 5);

            var read = messages.Select(m => UserData.Of(m, Alphabet.Gsm7)).ToList();
            // Cutting joins no halves: a lone surrogate of the random text is replaced in the whole as in the parts.
            Assert.Equal(TextCoding.Decode(TextCoding.Encode(text, Alphabet.Ucs2), Alphabet.Ucs2),
                string.Concat(read.Select(one => one.Text)));
            Assert.Equal(way == LongTexts.Payload ? 1 : Fit.Measure(text).Segments, messages.Count);
        }, iter: 1_000);

    [Fact]
    public void Messages_LongTextByHeaders_NumbersThePartsUnderOneReference()
    {
        var messages = new Submission().Messages(new string('a', 400), Shared, 0x1207);

        Assert.All(messages, one => Assert.Equal(0x40, one.EsmClass));
        Assert.Equal(
            ["050003070301", "050003070302", "050003070303"],
            messages.Select(one => Convert.ToHexString(one.ShortMessage.Span[..HeaderOctets])));
        Assert.All(messages, one => Assert.Equal(Shared.Destination, one.Destination));
    }

    [Fact]
    public void Messages_LongTextBySar_NumbersThePartsInParameters()
    {
        var messages = new Submission(LongTexts: LongTexts.Sar).Messages(new string('ọ', 71), Shared, 0x1207);

        Assert.All(messages, one => Assert.Equal((0, 8), (one.EsmClass, one.DataCoding)));
        Assert.Equal(
            ["1207 1/2", "1207 2/2"],
            messages.Select(one => $"{one.Tlvs.SarReference:X4} {one.Tlvs.SarPart}/{one.Tlvs.SarTotal}"));
        Assert.Equal([134, 8], messages.Select(one => one.ShortMessage.Length));
    }

    [Fact]
    public void Messages_LongTextByPayload_IsOneMessageWithAnEmptyShortMessage()
    {
        var message = Assert.Single(
            new Submission(LongTexts: LongTexts.Payload).Messages(new string('a', 161), Shared, 1));

        Assert.True(message.ShortMessage.IsEmpty);
        Assert.Equal(161, message.Tlvs.MessagePayload!.Value.Length);
    }

    [Theory]
    [InlineData("é{", 0x00, "E97B")]
    [InlineData("ọ", 0x08, "1ECD")]
    [InlineData("€", 0x08, "20AC")]
    public void Messages_LineWhoseDefaultIsLatin1_UsesItWhereItHoldsTheText(string text, byte coding, string octets)
    {
        var message = Assert.Single(new Submission(Alphabet.Latin1).Messages(text, Shared, 1));

        Assert.Equal((coding, octets), (message.DataCoding, Convert.ToHexString(message.ShortMessage.Span)));
    }

    [Fact]
    public void Messages_LetterTheLinesDefaultLacks_IsCutToTheWideSegments()
    {
        var submission = new Submission(Alphabet.Latin1);
        var text = "€" + new string('a', 99);

        var messages = submission.Messages(text, Shared, 1);

        Assert.Equal((2, 2), (messages.Count, submission.Segments(text)));
        Assert.All(messages, one => Assert.InRange(one.ShortMessage.Length, 1, 140));
    }
}
