using System.Globalization;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Wording;

public sealed class SpokenTests
{
    private static readonly TextFile English = Repository.Dialogs.Book.File("en");

    // The words are from memory.
    [Theory]
    [InlineData("en", false, "three", "third")]
    [InlineData("fr", false, "trois", "troisième")]
    [InlineData("fr", true, "trois", "troisième")]
    [InlineData("pt", false, "três", "terceiro")]
    [InlineData("pt", true, "três", "terceira")]
    [InlineData("sw", false, "tatu", "tatu")]
    public void Number_InALanguage_IsInItsWords(string language, bool feminine, string number, string ordinal)
    {
        var spoken = Of(language);

        Assert.Equal(number, spoken.InWords(3, feminine));
        Assert.Equal(ordinal, spoken.AsOrdinal(3, feminine));
    }

    [Theory]
    [InlineData("fr", "une", "première")]
    [InlineData("pt", "uma", "primeira")]
    public void Number_OfAFeminineThing_IsFeminine(string language, string number, string ordinal)
    {
        var spoken = Of(language);

        Assert.Equal(number, spoken.InWords(1, feminine: true));
        Assert.Equal(ordinal, spoken.AsOrdinal(1, feminine: true));
    }

    [Fact]
    public void Ordinal_FirstAndSecondInSwahili_AreTheirOwnWords() =>
        Assert.Equal(("kwanza", "pili"), (Of("sw").AsOrdinal(1), Of("sw").AsOrdinal(2)));

    [Fact]
    public void Number_BeyondTheOwnWords_IsInFigures() =>
        Assert.Equal(("21", "21"), (Of("sw").InWords(21), Of("sw").AsOrdinal(21)));

    [Theory]
    [InlineData("en", true)]
    [InlineData("fr", true)]
    [InlineData("pt", true)]
    [InlineData("sw", false)]
    [InlineData("am", false)]
    public void IsKnownToHumanizer_Language_TellsWhereOwnWordsAreNeeded(string language, bool known) =>
        Assert.Equal(known, Spoken.IsKnownToHumanizer(language));

    [Theory]
    [InlineData("")]
    [InlineData("en-US")]
    [InlineData("pt-BR")]
    [InlineData("am-ET")]
    public void Say_OnAMachineOfAnotherCulture_IsTheSame(string culture)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        var machine = CultureInfo.GetCultureInfo(culture);
        (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (machine, machine);
        try
        {
            var list = new Value.Materials(["cow-dung", "lime", "sawdust"]);

            Assert.Equal("cow dung, lime and sawdust", Repository.Dialogs.Book.Word("en", list));
            Assert.Equal("third", Repository.Dialogs.Book.Word("en", new Value.Ordinal(3)));
            Assert.Equal("mara tatu", Repository.Dialogs.Book.Word("sw", new Value.Count("turns", 3)));
            Assert.Equal("2.5 m", Repository.Dialogs.Book.Word("en", new Value.Metres(2.5)));
            Assert.Equal("2,5 m", Repository.Dialogs.Book.Word("fr", new Value.Metres(2.5)));
            Assert.Equal("2,5 m", Repository.Dialogs.Book.Word("pt", new Value.Metres(2.5)));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = before;
        }
    }

    private static Spoken Of(string language) => new(Repository.Dialogs.Book.Speaks(language)
        ? Repository.Dialogs.Book.File(language)
        : English with { Language = language });
}
