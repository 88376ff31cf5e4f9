using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Languages whose verb ends the clause, in words made up for it.</summary>
public sealed class ClauseTests
{
    private static readonly Reader Sut = SmallLexicon.Reader("""
        materials: {wood-ash: [ash], cow-dung: [dung], dry-grass: [hay]}
        measures: {sack: [sack]}
        numbers: {"1": [one], "2": [two], "3": [three], "50": [fifty], "100": [hundred]}
        fractions: {"0.5": [andhalf]}
        particles: {and: [and, andhalf], lacking: [lacks], have: [have], asking: [mayi]}
        urgent: [burnt]
        daysAgo: {"1": [yesterday]}
        intents: {delay: [cannot .. now], "yes": [yes], "no": [nono], stop: [enough]}
        """);

    [Theory]
    [InlineData("ash lacks hay 2 sack")]
    [InlineData("hay 2 sack, ash lacks")]
    [InlineData("ash and dung lacks, hay 2 sack")]
    [InlineData("ash dung lacks hay 2 sack")]
    public void Read_AbsenceSaidAfterTheMaterial_DropsWhatStandsBeforeIt(string text) =>
        Assert.Equal(new("dry-grass", 2, "sack"), Assert.Single(Sut.Read(text, "zz").Materials));

    [Fact]
    public void Read_AbsenceAfterACountedMaterial_LeavesItThere() =>
        Assert.Equal(new("dry-grass", 2, "sack"), Assert.Single(Sut.Read("hay 2 sack lacks", "zz").Materials));

    [Fact]
    public void Read_QuestionThatEndsInItsVerb_ListsNothing() => Assert.Empty(Sut.Read("ash mayi?", "zz").Materials);

    [Fact]
    public void Read_QuestionAfterAList_LeavesTheList() =>
        Assert.Equal(new("dry-grass", 2, "sack"), Assert.Single(Sut.Read("hay 2 sack. ash mayi?", "zz").Materials));

    [Theory]
    [InlineData("2 andhalf", 2.5)]
    [InlineData("two andhalf", 2.5)]
    [InlineData("two hundred", 200)]
    [InlineData("one hundred", 100)]
    [InlineData("two hundred fifty", 250)]
    public void Read_NumberOfSeveralWords_IsOneNumber(string text, double number) =>
        Assert.Equal((decimal)number, Sut.Read(text, "zz").BareNumber);

    [Theory]
    [InlineData("2 sack andhalf hay")]
    [InlineData("2 andhalf sack hay")]
    public void Read_AndAHalfInOneWord_JoinsTheAmount(string text) =>
        Assert.Equal(new("dry-grass", 2.5m, "sack"), Assert.Single(Sut.Read(text, "zz").Materials));

    [Theory]
    [InlineData("two three sack hay", 2)]
    [InlineData("two sack hay, three sack ash", 2)]
    public void Read_TwoNumbersInARow_IsTheLower(string text, int amount) =>
        Assert.Equal(new("dry-grass", amount, "sack"), Sut.Read(text, "zz").Materials[0]);

    [Fact]
    public void Read_AlarmAndDayAmongWordsThatDoNotMatter_AreHeard()
    {
        var reading = Sut.Read("cannot burnt yesterday now", "zz");

        Assert.Equal((Intent.Delay, true, 1), (reading.Intent, reading.Urgent, reading.DaysAgo));
    }

    [Theory]
    [InlineData("yes, hay 2 sack have")]
    [InlineData("nono, enough")]
    public void Read_YesOrNoBesideAListOrAStop_IsNoIntentOfItsOwn(string text) =>
        Assert.Empty(Sut.Read(text, "zz").Also);
}
