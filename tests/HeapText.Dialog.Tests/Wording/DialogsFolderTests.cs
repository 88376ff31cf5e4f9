using HeapText.Dialog.Engine;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Wording;

public sealed class DialogsFolderTests
{
    [Fact]
    public void DialogsFolder_AsShipped_HasNoFault()
    {
        var (_, faults) = DialogSet.Load(Repository.Path("dialogs"));

        Assert.Empty(faults);
    }

    [Theory]
    [InlineData("  stopped-still: \"You have", "  stopped-stil: \"You have", "the message 'stopped-still' is missing")]
    [InlineData("  stopped-still: \"You have", "  stopped-stil: \"You have", "there is no message 'stopped-stil'")]
    [InlineData("Good: we remind you at {hour}.", "Good.", "'hour-set' lacks the placeholder {hour}")]
    [InlineData("Welcome back.", "Welcome back to {group}.", "'started' has no placeholder {group}")]
    [InlineData("Welcome back.", "Welcome back {.", "a brace has no partner")]
    [InlineData("Welcome back.", "Welcome \u2013 back.", "has letters outside the GSM 7-bit alphabet: \u2013")]
    [InlineData("  lime: lime\n", "", "the material 'lime' is missing")]
    [InlineData("  16: four in the afternoon\n", "", "the hour '16' is missing")]
    [InlineData("Sunday]", "Sunday, Someday]", "give 7 names, not 8")]
    [InlineData("  started: ", "  stopped: again\n  started: ", "'stopped' stands twice")]
    [InlineData("language: en", "language: sw", "language is 'sw', but the folder is 'en'")]
    [InlineData("messages:", "messages: [", "not YAML")]
    public void Lint_OneThingWrongInEnglishText_NamesIt(string old, string changed, string expected)
    {
        using var dialogs = new BrokenDialogs().Replace("en/text.yml", old, changed);

        var faults = dialogs.Faults();

        Assert.Contains(faults, f => f.File.EndsWith("en/text.yml", StringComparison.Ordinal)
            && f.Message.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Lint_MessageOverItsBudgetAtItsLongestValues_SaysHowMuchAndWhere()
    {
        using var dialogs = new BrokenDialogs().Replace("en/text.yml", "Next: the {turn} turning",
            "Next, and please do not forget it, for a heap that stands too long without it goes cold in its middle "
            + "and then smells: the {turn} turning");

        var fault = Assert.Single(dialogs.Faults());

        var line = File.ReadAllLines(Repository.Path("dialogs", "en", "text.yml"))
            .TakeWhile(l => !l.Contains("Next: the {turn} turning", StringComparison.Ordinal)).Count() + 1;
        Assert.Equal(line, fault.Line);
        Assert.Contains("'next-turn' takes 2 segments", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "GSM7", 1)]
    [InlineData(2, "GSM7", 2)]
    [InlineData(1, "UCS2", 2)]
    [InlineData(2, "UCS2", 3)]
    [InlineData(3, "UCS2", 3)]
    public void SegmentsIn_WideAlphabet_IsOneMoreButNeverOverThree(int segments, string alphabet, int most) =>
        Assert.Equal(most, new MessageSpec("", segments, false, []).SegmentsIn(alphabet));

    [Fact]
    public void Lint_MessageInAWideAlphabetOverItsBudget_SaysWhatIsAllowed()
    {
        var tooLong = string.Concat(Enumerable.Repeat("ሸፍናችሁ ተዉት። ", 20));
        using var dialogs = new BrokenDialogs().Replace("am/text.yml", "  started: \"", "  started: \"" + tooLong);

        Assert.Contains("'started' takes 4 segments (232 units), allowed 2",
            Assert.Single(dialogs.Faults()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lint_ManyFaults_ReportsAllAtOnce()
    {
        using var dialogs = new BrokenDialogs()
            .Replace("en/text.yml", "  lime: lime\n", "").Replace("sw/text.yml", "  lime: chokaa\n", "");

        Assert.Equal(2, dialogs.Faults().Count);
    }
}
