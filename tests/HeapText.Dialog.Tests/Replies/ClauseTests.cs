using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Languages whose verb ends the clause, in words made up for it.</summary>
public sealed class ClauseTests
{
    private static readonly Reader Sut = SmallLexicon.Reader("""
        materials: {wood-ash: [ash], cow-dung: [dung], dry-grass: [hay]}
        measures: {sack: [sack]}
        numbers: {"1": [one], "2": [two], "50": [fifty], "100": [hundred]}
        fractions: {"0.5": [andhalf]}
        particles: {and: [and, andhalf], lacking: [lacks], have: [have], asking: [mayi]}
        intents: {"yes": [yes]}
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

    [Fact]
    public void Read_YesBeforeAList_IsNoIntentBesideIt() =>
        Assert.Empty(Sut.Read("yes, hay 2 sack have", "zz").Also);
}
