using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Engine;

public sealed class WhichMaterialTests
{
    private const string Question = "By \"grass\", which do you mean? 1 dry grass, 2 fresh grass";

    [Fact]
    public void AmbiguousWord_InAStockText_IsAskedForAndNotGuessed()
    {
        var talker = Joined().Hear("20 wheelbarrows grass, 14 buckets cow dung");

        Assert.Equal(Question, talker.Said);
        Assert.Equal(Stage.AskingWhich, talker.Farmer!.Stage);
        Assert.Empty(talker.Farmer.Heaps);
    }

    [Theory]
    [InlineData("1", "dry-grass")]
    [InlineData("2", "fresh-grass")]
    [InlineData("two", "fresh-grass")]
    [InlineData("dry grass", "dry-grass")]
    [InlineData("Dry", "dry-grass")]
    [InlineData("fresh", "fresh-grass")]
    [InlineData("it is dry grass", "dry-grass")]
    public void Answer_ByNumberOrWord_CompletesTheStockWithWhatWasTold(string answer, string material)
    {
        var talker = Joined().Hear("20 wheelbarrows grass, 14 buckets cow dung", answer);

        var stock = talker.Farmer!.Heaps is [var heap]
            ? heap.Stock.Select(p => (p.Material, p.Amount, p.Measure))
            : talker.Farmer.Draft!.Items.Select(i => (i.Material, i.Amount!.Value, i.Measure!));
        Assert.Contains((material, 20m, "wheelbarrow"), stock);
        Assert.Contains(("cow-dung", 14m, "bucket"), stock);
        Assert.Contains(talker.Farmer.Stage, (Stage[])[Stage.Building, Stage.Gathering]);
    }

    [Fact]
    public void SeveralAmbiguousWords_AreAskedOneAfterAnother()
    {
        var talker = Joined().Hear("20 wheelbarrows grass, 3 sacks husks, 14 buckets manure");
        Assert.Equal(Question, talker.Said);

        talker.Hear("1");
        Assert.Equal("By \"manure\", which do you mean? 1 cow dung, 2 goat manure, 3 chicken manure", talker.Said);

        talker.Hear("goat");
        Assert.Equal("By \"husks\", which do you mean? 1 rice husks, 2 coffee husks, 3 coconut husks", talker.Said);

        talker.Hear("2");
        Assert.Equal(["dry-grass", "goat-manure", "coffee-husk"], Items(talker));
    }

    [Fact]
    public void Slip_AsNearToTwoMaterials_IsAskedFor()
    {
        var talker = Joined().Hear("20 wheelbarrows glrass, 14 buckets cow dung");

        Assert.Equal("By \"glrass\", which do you mean? 1 fresh grass, 2 dry grass, 3 glass", talker.Said);
    }

    [Fact]
    public void Answer_ThatNeverGoesIn_IsKeptOut()
    {
        var talker = Joined().Hear("20 wheelbarrows glrass, 14 buckets cow dung", "glass");

        Assert.Contains("Keep out of the heap: glass", talker.Said, StringComparison.Ordinal);
        Assert.Equal(["cow-dung"], Items(talker));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("no")]
    public void Answer_NoneOfThem_LeavesTheWordOut(string answer)
    {
        var talker = Joined().Hear("20 wheelbarrows grass, 14 buckets cow dung", answer);

        Assert.Equal(["cow-dung"], Items(talker));
    }

    [Theory]
    [InlineData("3")]
    [InlineData("blah")]
    public void Answer_ThatIsNone_HasItAskedAgain(string answer)
    {
        var talker = Joined().Hear("20 wheelbarrows grass, 14 buckets cow dung", answer);

        Assert.Equal(Question, talker.Said);
        talker.Hear("1");
        Assert.Equal(["cow-dung", "dry-grass"], Items(talker));
    }

    [Fact]
    public void MeasureThatWasNotTold_IsAskedAfterTheWord()
    {
        var talker = Joined().Hear("grass 20, cow dung 14");
        Assert.Equal(Question, talker.Said);

        talker.Hear("1");

        Assert.Equal(Stage.AskingMeasure, talker.Farmer!.Stage);
    }

    [Fact]
    public void MoreStock_InsteadOfAnAnswer_IsKeptAndTheQuestionStays()
    {
        var talker = Joined().Hear("20 wheelbarrows grass", "14 buckets cow dung");

        Assert.Equal(Question, talker.Said);
        talker.Hear("1");
        Assert.Equal(["cow-dung", "dry-grass"], Items(talker));
    }

    [Fact]
    public void WordForWhatWasAskedFor_NeedsNoQuestion()
    {
        var talker = Joined().Hear("20 wheelbarrows dry grass");
        Assert.Equal(Stage.Gathering, talker.Farmer!.Stage);

        talker.Hear("grass 21 wheelbarrows");

        Assert.Contains(talker.Farmer.Draft!.Items, i => i is { Material: "dry-grass", Amount: 21 });
    }

    [Fact]
    public void MoreOfAnAmbiguousWord_AddsToTheRecipeOnceSettled()
    {
        var talker = Joined().Hear("20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung");
        Assert.Equal(Stage.Building, talker.Farmer!.Stage);

        talker.Hear("3 more sacks grass", "2");

        Assert.Contains(talker.Heap.Stock, p => p is { Material: "fresh-grass", Amount: 3, Measure: "sack" });
        Assert.Contains(talker.Heap.Stock, p => p is { Material: "maize-stover", Amount: 20 });
    }

    [Fact]
    public void Check_WhileAskedWhich_IsTakenAsTheAnswerOnlyWhenItNamesAChoice()
    {
        var talker = Talker.WithHeap().Hear("20 wheelbarrows grass, 14 buckets cow dung");
        Assert.Equal(Stage.AskingWhich, talker.Farmer!.Stage);

        talker.Hear("dry");

        Assert.Null(talker.Farmer.Heaps[0].Check);
        Assert.NotEqual(Stage.AskingWhich, talker.Farmer.Stage);
    }

    private static Talker Joined() => new Talker().Hear("join 41", "yes");

    private static List<string> Items(Talker talker) => talker.Farmer!.Heaps is [var heap]
        ? [.. heap.Stock.Select(p => p.Material)]
        : [.. talker.Farmer.Draft!.Items.Select(i => i.Material)];
}
