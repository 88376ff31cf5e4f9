using HeapText.Dialog.Lint;
using HeapText.Dialog.Tests.Wording;

namespace HeapText.Dialog.Tests.Lint;

public sealed class DialogLintTests
{
    private static readonly DialogLint Shipped = DialogLint.Check(Repository.Path("dialogs"));

    [Fact]
    public void Lint_DialogsAsShipped_FindsNoFault() => Assert.Empty(Shipped.Faults);

    [Fact]
    public void Lint_DialogsAsShipped_SaysWhereEachLanguageStands() => Assert.All(Shipped.Languages, language =>
    {
        Assert.False(language.Reviewed);
        Assert.Equal(language.Messages, language.MessagesBySegments.Values.Sum());
        Assert.InRange(language.MessagesBySegments.Keys.Max(), 1, 3);
        Assert.InRange(language.WordsASentence, 3, 12);
        Assert.True(language.Phrases["material"] > 500);
    });

    [Fact]
    public void Lint_TextsAThirdLonger_WarnsOfThoseThatBreakTheirBudget() =>
        Assert.Contains(Shipped.Warnings, warning => warning.Message.StartsWith(
            "in a language a third longer 'built' takes 2 segments", StringComparison.Ordinal));

    [Theory]
    [InlineData("en/text.yml", "Welcome back.", "The moisture is back.",
        "'started' says 'moisture': say wetness or water")]
    [InlineData("en/text.yml", "Welcome back.", "It decomposes.", "'started' says 'decomposes': say rot or break down")]
    [InlineData("en/text.yml", "Welcome back.", "Welcome back to the heap that you have made with your own two hands "
        + "from stalks and dung and green weeds and earth.", "'started' has a sentence of 23 words, at most 20")]
    [InlineData("en/text.yml", "bucket: {one: bucket, other", "bucket: {other",
        "'bucket' lacks the plural form 'one', which en needs")]
    [InlineData("en/text.yml", "bucket: {one: bucket,", "bucket: {one: bucket, few: buckets,",
        "'bucket' has the plural form 'few', which en has not")]
    [InlineData("en/text.yml", "pots: {one: \"{count} pot\", other", "pots: {other",
        "'pots' lacks the plural form 'one'")]
    [InlineData("en/text.yml", "other: \"{count} pots\"", "other: \"pots\"", "'pots' lacks the placeholder {count}")]
    [InlineData("en/text.yml", "i = 1 and v = 0", "exactly 1", "'one' is no plural rule")]
    [InlineData("en/text.yml", "reviewed: false", "reviewed: soon", "write true or false")]
    [InlineData("en/text.yml", "{á: a,", "{á: ა,", "'ა' is not in the GSM 7-bit alphabet")]
    [InlineData("en/text.yml", "{á: a,", "{é: e,", "'é' is not one letter outside the GSM 7-bit alphabet")]
    [InlineData("en/text.yml", "  lime: lime\n", "  lime: l\u00ecm\u0119\n",
        "'lime' has letters outside the GSM 7-bit")]
    [InlineData("sw/text.yml", "  [sifuri, ", "  [", "the numbers of sw need 21 words, not 20")]
    [InlineData("en/words.yml", "  lantana:\n    - ", "  lantana:\n    - bucket\n    - ",
        "'bucket' stands for both material 'lantana'")]
    [InlineData("en/words.yml", "  lantana:\n    - ", "  lantana:\n    - stalks of the maize\n    - ",
        "'stalks maize' stands for both material 'maize-stover'")]
    public void Lint_OneThingWrong_NamesItAtItsLine(string file, string old, string changed, string expected)
    {
        using var dialogs = new BrokenDialogs().Replace(file, old, changed);

        var fault = Assert.Single(dialogs.Lint().Faults,
            fault => fault.Message.Contains(expected, StringComparison.Ordinal));

        Assert.EndsWith(file, fault.File, StringComparison.Ordinal);
        Assert.True(fault.Line > 1);
    }

    [Fact]
    public void Lint_KeyMissing_IsAtItsPart()
    {
        using var dialogs = new BrokenDialogs().Replace("en/text.yml", "  lime: lime\n", "");

        var fault = Assert.Single(
            dialogs.Lint().Faults, fault => fault.Message.Contains("'lime'", StringComparison.Ordinal));

        Assert.Equal((LineOf("en", "materials:"), 1), (fault.Line, fault.Column));
    }

    [Fact]
    public void Lint_KeyUnknown_IsAtTheKey()
    {
        using var dialogs = new BrokenDialogs().Replace("en/text.yml", "  lime: lime", "  limes: lime");

        var fault = Assert.Single(dialogs.Lint().Faults, fault => fault.Message == "there is no material 'limes'");

        Assert.Equal((LineOf("en", "  lime: lime"), 3), (fault.Line, fault.Column));
    }

    [Fact]
    public void Lint_MessageOverItsBudget_SaysSegmentsBudgetAndTheText()
    {
        using var dialogs = new BrokenDialogs().Replace(
            "en/text.yml", "Welcome back.", string.Join(' ', Enumerable.Repeat("Welcome back to us.", 9)));

        var fault = Assert.Single(dialogs.Lint().Faults);

        Assert.Equal(LineOf("en", "  started:"), fault.Line);
        Assert.StartsWith("'started' takes 2 segments (179 units), allowed 1; longest: Welcome back to us.",
            fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lint_SentencesLongOnAverage_SaysTheAverage()
    {
        using var dialogs = new BrokenDialogs();
        dialogs.Change("en/text.yml", text => text.Replace(". ", " and ", StringComparison.Ordinal)
            .Replace("? ", " and ", StringComparison.Ordinal));

        Assert.Contains(dialogs.Lint().Faults,
            fault => fault.Message.Contains("words on average, at most 12", StringComparison.Ordinal));
    }

    [Fact]
    public void Lint_PhraseOfTwoLanguagesWithTwoMeanings_IsAWarning()
    {
        using var dialogs = new BrokenDialogs().Replace(
            "en/words.yml", "  lantana:\n    - ", "  lantana:\n    - cendre\n    - ");

        var lint = dialogs.Lint();

        Assert.Empty(lint.Faults);
        Assert.Contains(lint.Warnings, warning =>
            warning.Message == "'cendre' is material 'wood-ash' here and material 'lantana' in en");
    }

    [Fact]
    public void Start_WordToAvoid_IsNoReasonToRefuse()
    {
        using var dialogs = new BrokenDialogs().Replace("en/text.yml", "Welcome back.", "The moisture is back.");

        Assert.Empty(dialogs.Faults());
    }

    private static int LineOf(string language, string start) =>
        File.ReadAllLines(Repository.Path("dialogs", language, "text.yml"))
            .TakeWhile(line => !line.StartsWith(start, StringComparison.Ordinal)).Count() + 1;
}
