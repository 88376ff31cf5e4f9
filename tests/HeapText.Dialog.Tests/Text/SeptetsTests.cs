using CsCheck;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Tests.Text;

public sealed class SeptetsTests
{
    /// <summary>"hellohello" as it stands in the textbook example of packing; from memory.</summary>
    [Fact]
    public void ReadUserData_PackedSeptets_AreTheText() =>
        Assert.Equal("hellohello",
            Septets.ReadUserData(Convert.FromHexString("E8329BFD4697D9EC37"), 10, hasHeader: false));

    [Fact]
    public void Read_EveryCharacterOfTheAlphabet_ComesBack() =>
        Gen.String[Gen.Char[Gsm7.Default.Replace("\u001b", "", StringComparison.Ordinal)
                + string.Concat(Gsm7.Extension.Values)], 0, 160]
            .Sample(text =>
            {
                Assert.Equal(SeptetsOf(text), Septets.Write(text));
                Assert.Equal(text, Septets.Read(Septets.Write(text)));
            }, iter: 500);

    [Theory]
    [InlineData("@_~", "00 11 1B3D")]
    [InlineData("5€ à", "35 1B65 20 7F")]
    [InlineData("", "")]
    public void Write_Text_GivesItsSeptets(string text, string septets) =>
        Assert.Equal(Bytes(septets), Septets.Write(text));

    [Theory]
    [InlineData("ß²")]
    [InlineData("\u001b")]
    public void Write_CharacterOutsideTheAlphabet_IsRefused(string text) =>
        Assert.Throws<ArgumentException>(() => Septets.Write(text));

    // 3GPP TS 23.038 annex A.2.1, A.2.2, A.2.3, from memory.
    [Theory]
    [InlineData(1, "1B47 1B49 1B53 1B63 1B67 1B69 1B73 1B65", "ĞİŞçğış€")]
    [InlineData(2, "1B09 1B41 1B49 1B4F 1B55 1B61 1B69 1B6F 1B75", "çÁÍÓÚáíóú")]
    [InlineData(3, "1B05 1B09 1B0B 1B0C 1B0E 1B0F 1B1F 1B41 1B5B 1B5C 1B61 1B7B 1B7C 1B7F", "êçÔôÁáÊÀÃÕÂãõâ")]
    [InlineData(3, "1B3C 1B3E 1B28 1B29 1B65", "[]{}€")]
    [InlineData(13, "1B63 1B65", "c€")]
    [InlineData(0, "1B63", "c")]
    public void Read_SingleShiftOfALanguage_GivesItsLetters(byte language, string septets, string expected) =>
        Assert.Equal(expected, Septets.Read(Bytes(septets), singleShift: language));

    // 3GPP TS 23.038 annex A.3.1 and A.3.3, from memory. Spanish has no locking shift.
    [Theory]
    [InlineData(1, "04 07 0B 0C 1C 1D 40 60 61", "€ıĞğŞşİça")]
    [InlineData(3, "04 06 07 08 09 0B 0C 0E 0F 5B 5C 7B 7C 61", "êúíóçÔôÁáÃÕãõa")]
    [InlineData(2, "09 0B 60", "ÇØ¿")]
    [InlineData(9, "09 0B 60", "ÇØ¿")]
    public void Read_LockingShiftOfALanguage_GivesItsLetters(byte language, string septets, string expected) =>
        Assert.Equal(expected, Septets.Read(Bytes(septets), lockingShift: language));

    [Theory]
    [InlineData("1B1B41", " A")]
    [InlineData("1B", "")]
    [InlineData("411B", "A")]
    [InlineData("C1", "A")]
    public void Read_EscapeWithoutALetter_IsASpaceOrNothing(string septets, string expected) =>
        Assert.Equal(expected, Septets.Read(Bytes(septets)));

    /// <summary>The text begins at the first whole septet after the header.</summary>
    [Theory]
    [InlineData("03240103", "criança", "637269616E1B0961")]
    [InlineData("03250103", "criança", "637269616E0961")]
    [InlineData("06240103250103", "ãã", "7B1B7B")]
    [InlineData("0500037F0201", "crian", "637269616E")]
    public void ReadUserData_WithAHeader_ReadsByTheLanguageItNames(string header, string expected, string septets)
    {
        var headerOctets = Convert.FromHexString(header);
        var headerSeptets = (headerOctets.Length * 8 + 6) / 7;
        var body = Convert.FromHexString(septets);
        var octets = Pack([.. new byte[headerSeptets], .. body]);
        headerOctets.CopyTo(octets, 0);

        Assert.Equal(expected, Septets.ReadUserData(octets, headerSeptets + body.Length, hasHeader: true));
    }

    [Fact]
    public void ReadUserData_AnyOctets_NeverThrows() =>
        Gen.Select(Gen.Byte.Array[0, 140], Gen.Int[-1, 300], Gen.Bool).Sample((octets, length, hasHeader) =>
            Assert.True(Septets.ReadUserData(octets, length, hasHeader).Length <= octets.Length * 8 / 7), iter: 5_000);

    [Theory]
    [InlineData("3 sacos de estêrco", "3 sacos de esterco")]
    [InlineData("6 wheelbarröws maïze stalks", "6 wheelbarrows maize stalks")]
    [InlineData("3 buçkets çow dung", "3 buckets cow dung")]
    [InlineData("3 buckets go\u0061\u0301t manure", "3 buckets goat manure")]
    [InlineData("3 buckets ash\u00a0", "3 buckets ash")]
    public void Text_WithLettersOfAShiftTable_ReadsAsWithPlainOnes(string shifted, string plain)
    {
        var (one, other) = (Repository.Dialogs.Reader.Read(shifted, "en"), Repository.Dialogs.Reader.Read(plain, "en"));

        Assert.Equal(other.Intent, one.Intent);
        Assert.Equal(other.Materials, one.Materials);
    }

    private static byte[] SeptetsOf(string text) => [.. text.SelectMany(c =>
        Gsm7.Extension.Where(pair => pair.Value == c).Select(pair => new byte[] { 0x1B, pair.Key }).FirstOrDefault()
            ?? [(byte)Gsm7.Default.IndexOf(c, StringComparison.Ordinal)])];

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));

    private static byte[] Pack(byte[] septets)
    {
        var octets = new byte[(septets.Length * 7 + 7) / 8];
        for (var bit = 0; bit < septets.Length * 7; bit++)
            if ((septets[bit / 7] >> bit % 7 & 1) != 0) octets[bit / 8] |= (byte)(1 << bit % 8);
        return octets;
    }
}
