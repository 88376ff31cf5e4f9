using CsCheck;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class TextCodingTests
{
    private static readonly Alphabet[] Alphabets = Enum.GetValues<Alphabet>();

    // SMPP 3.4 section 5.2.19 and 3GPP TS 23.038 section 4, from memory.
    [Theory]
    [InlineData(0x00, nameof(Alphabet.Latin1))]
    [InlineData(0x01, nameof(Alphabet.Ascii))]
    [InlineData(0x02, nameof(Alphabet.Binary))]
    [InlineData(0x03, nameof(Alphabet.Latin1))]
    [InlineData(0x04, nameof(Alphabet.Binary))]
    [InlineData(0x08, nameof(Alphabet.Ucs2))]
    [InlineData(0x05, nameof(Alphabet.Binary))]
    [InlineData(0x10, nameof(Alphabet.Gsm7))]
    [InlineData(0x11, nameof(Alphabet.Gsm7))]
    [InlineData(0x14, nameof(Alphabet.Binary))]
    [InlineData(0x18, nameof(Alphabet.Ucs2))]
    [InlineData(0xC8, nameof(Alphabet.Gsm7))]
    [InlineData(0xE0, nameof(Alphabet.Ucs2))]
    [InlineData(0xF0, nameof(Alphabet.Gsm7))]
    [InlineData(0xF4, nameof(Alphabet.Binary))]
    public void AlphabetOf_DataCoding_IsTheStandards(byte dataCoding, string alphabet) =>
        Assert.Equal(alphabet, TextCoding.AlphabetOf(dataCoding, Alphabet.Latin1).ToString());

    [Theory]
    [InlineData(nameof(Alphabet.Gsm7), "0068691B65", "@hi€")]
    [InlineData(nameof(Alphabet.Gsm7), "68E969", "h\uFFFDi")]
    [InlineData(nameof(Alphabet.Ascii), "6869E9", "hi\uFFFD")]
    [InlineData(nameof(Alphabet.Latin1), "68E9", "hé")]
    [InlineData(nameof(Alphabet.Binary), "68FF", "h\uFFFD")]
    [InlineData(nameof(Alphabet.Ucs2), "00681ECD", "họ")]
    [InlineData(nameof(Alphabet.Ucs2), "D83CDF3D", "\U0001F33D")]
    [InlineData(nameof(Alphabet.Ucs2), "0068D83C", "h\uFFFD")]
    [InlineData(nameof(Alphabet.Ucs2), "006800", "h\uFFFD")]
    public void Decode_Octets_GivesTextAndReplacesWhatIsNone(string alphabet, string octets, string text) =>
        Assert.Equal(text, TextCoding.Decode(Convert.FromHexString(octets), Enum.Parse<Alphabet>(alphabet)));

    [Fact]
    public void Decode_AnyOctets_NeverThrows() =>
        Gen.Select(Gen.Byte.Array[0, 300], Gen.OneOf([.. Alphabets.Select(Gen.Const)])).Sample((octets, alphabet) =>
            Assert.True(TextCoding.Decode(octets, alphabet).Length <= octets.Length), iter: 20_000);

    [Fact]
    public void DecodeAfterEncode_AnyTextTheAlphabetHolds_IsTheText() =>
        Gen.Select(Gen.String[Gen.Char["aé{€@Δọ\n"], 0, 50], Gen.OneOf([.. Alphabets.Select(Gen.Const)]))
            .Where((text, alphabet) => TextCoding.Holds(alphabet, text))
            .Sample((text, alphabet) =>
                Assert.Equal(text, TextCoding.Decode(TextCoding.Encode(text, alphabet), alphabet)), iter: 2_000);

    [Fact]
    public void Encode_CharacterTheAlphabetLacks_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => TextCoding.Encode("ọ", Alphabet.Gsm7));
        Assert.Throws<ArgumentException>(() => TextCoding.Encode("€", Alphabet.Latin1));
        Assert.Throws<ArgumentException>(() => TextCoding.Encode("é", Alphabet.Ascii));
    }

    // 3GPP TS 23.040 section 9.2.3.24.15 and .16: elements 24 (single shift) and 25 (locking shift), from memory.
    [Theory]
    [InlineData("03240103" + "637269616E1B0961", "criança")]
    [InlineData("03250103" + "637269616E0961", "criança")]
    [InlineData("0500037F0101" + "6869", "hi")]
    [InlineData("FF6869", "")]
    public void UserData_WithAHeader_IsReadByTheLanguageItNames(string octets, string text)
    {
        var body = new MessageBody { EsmClass = EsmClass.HasHeader, ShortMessage = Convert.FromHexString(octets) };

        Assert.Equal(text, UserData.Of(body, Alphabet.Gsm7).Text);
    }

    [Theory]
    [InlineData("0500037F0201", "ShortReference 127 1/2")]
    [InlineData("060804123402 01", "LongReference 4660 1/2")]
    [InlineData("08240103 00037F0302", "ShortReference 127 2/3")]
    [InlineData("0500037F0203", "none")]
    [InlineData("0500037F0200", "none")]
    [InlineData("0500037F0000", "none")]
    [InlineData("0500037F", "none")]
    [InlineData("050002FF0201", "none")]
    [InlineData("00", "none")]
    public void UserData_Header_SaysWhichPartItIs(string header, string expected)
    {
        var octets = Convert.FromHexString(header.Replace(" ", "", StringComparison.Ordinal));
        var body = new MessageBody { EsmClass = EsmClass.HasHeader, ShortMessage = octets };

        var part = UserData.Of(body, Alphabet.Gsm7).Part;

        Assert.Equal(expected, part is { } p ? $"{p.Kind} {p.Reference} {p.Number}/{p.Total}" : "none");
    }

    [Fact]
    public void UserData_HeaderThatNamesNoPart_LeavesTheParameters()
    {
        var body = new MessageBody
        {
            EsmClass = EsmClass.HasHeader,
            ShortMessage = Convert.FromHexString("0324010361"),
            Tlvs = Tlvs.None.With(TlvTag.SarReference, (ushort)9).With(TlvTag.SarTotal, (byte)2)
                .With(TlvTag.SarPart, (byte)1),
        };

        Assert.Equal(new PartOf(PartKind.Sar, 9, 2, 1), UserData.Of(body, Alphabet.Gsm7).Part);
    }

    [Fact]
    public void UserData_AnyOctets_NeverThrows() => Gen.Select(Gen.Byte.Array[0, 40], Gen.Byte).Sample(
        (octets, coding) =>
        {
            var body = new MessageBody { EsmClass = EsmClass.HasHeader, ShortMessage = octets, DataCoding = coding };

            Assert.True(UserData.Of(body, Alphabet.Gsm7).Text.Length <= octets.Length);
        }, iter: 20_000);
}
