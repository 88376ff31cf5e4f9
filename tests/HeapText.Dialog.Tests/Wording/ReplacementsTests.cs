using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Wording;

public sealed class ReplacementsTests
{
    private static readonly Replacements Portuguese = new(
        new Dictionary<char, string> { ['ç'] = "c", ['ã'] = "a", ['õ'] = "o", ['ô'] = "o", ['œ'] = "oe" }, ["pôde"]);

    [Theory]
    [InlineData("it’s", "it's")]
    [InlineData("4–6 … “so” « non »", "4-6 ... \"so\" \" non \"")]
    [InlineData("3\u00a0kg", "3 kg")]
    [InlineData("criança", "crianca")]
    [InlineData("SÃO Nações", "SAO Nacoes")]
    [InlineData("cœur", "coeur")]
    [InlineData("à é ñ Ç €", "à é ñ Ç €")]
    public void Apply_NearMissOfTheAlphabet_IsWrittenInIt(string text, string expected)
    {
        var plain = Portuguese.Apply(text);

        Assert.Equal(expected, plain);
        Assert.Equal(TextEncoding.Gsm7, Fit.Measure(plain).Encoding);
    }

    [Theory]
    [InlineData("Ela pôde vir", "Ela pôde vir")]
    [InlineData("Pôde", "Pôde")]
    [InlineData("ọ ɗ ኮ 🌽", "ọ ɗ ኮ 🌽")]
    [InlineData("\ud83c", "\ud83c")]
    public void Apply_LetterThatCarriesMeaning_Stays(string text, string expected) =>
        Assert.Equal(expected, Portuguese.Apply(text));

    [Fact]
    public void Say_NameWithALetterOutsideTheAlphabet_TakesOneSegmentStill()
    {
        var text = Repository.Dialogs.Book.Say(
            "en", Catalogue.Welcome, ("group", new Value.Name("São Conceição d’Água")));

        Assert.Contains("Sao Conceicao d'Agua", text, StringComparison.Ordinal);
        Assert.Equal((TextEncoding.Gsm7, 1), (Fit.Measure(text).Encoding, Fit.Measure(text).Segments));
    }

    [Fact]
    public void Say_InALanguageOfWideLetters_LeavesThemAll()
    {
        var wide = PseudoLanguage.Of(Repository.Dialogs.Book.File("en")) with { Alphabet = "UCS2" };
        var book = new Phrasebook([wide]);

        Assert.Contains("São", book.Say(wide.Language, Catalogue.Welcome, ("group", new Value.Name("São"))),
            StringComparison.Ordinal);
    }
}
