using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class ExplainingTests
{
    private const string Told =
        "We do not know \"zorbix\" yet and have asked Trainer, Marula Flats. For now we go on without it.";

    [Fact]
    public void UnknownWord_InAStockText_IsPutToTheTrainerAndTheRecipeGoesOn()
    {
        var talker = WithRecipe();

        Assert.Equal(Told, talker.Says[0].Text);
        Assert.Equal(Stage.Building, talker.Farmer!.Stage);
        Assert.Equal(["maize-stover", "green-weeds", "cow-dung"], talker.Heap.Stock.Select(p => p.Material));
        Assert.Equal([new UnknownWord("zorbix", 3, "sack", 0)], talker.Farmer.UnknownWords);
        Assert.Equal(ConcernReason.UnknownWord, talker.Farmer.Concern?.Reason);
    }

    [Fact]
    public void UnknownWord_WithNothingElse_IsPutToTheTrainerAndStockAskedAgain()
    {
        var talker = Joined().Hear("3 sacks zorbix");

        Assert.Equal(Told, talker.Says[0].Text);
        Assert.Equal(Stage.AskingStock, talker.Farmer!.Stage);
        Assert.StartsWith("What do you have", talker.Says[1].Text);
    }

    [Fact]
    public void SeveralUnknownWords_AreNamedInOneMessage()
    {
        var talker = Joined().Hear("14 buckets cow dung, 3 sacks zorbix, 2 basins blorpy");

        Assert.StartsWith("We do not know \"zorbix\" and \"blorpy\" yet", talker.Says[0].Text);
        Assert.Equal(2, talker.Farmer!.UnknownWords.Count);
    }

    [Fact]
    public void Explained_WhileStockIsTaken_CompletesItWithWhatWasTold()
    {
        var talker = Joined().Hear("14 wheelbarrows maize stalks, 3 sacks zorbix");
        Assert.Equal(Stage.Gathering, talker.Farmer!.Stage);

        talker.Explain("zorbix", "goat-manure");

        Assert.Equal("Trainer, Marula Flats says \"zorbix\" is goat manure. We add it to what you have.",
            talker.Says[0].Text);
        Assert.True(talker.Says.Count > 1);
        var items = talker.Farmer.Heaps is [var heap]
            ? heap.Stock.Select(p => (p.Material, p.Amount, p.Measure))
            : talker.Farmer.Draft!.Items.Select(i => (i.Material, i.Amount!.Value, i.Measure!));
        Assert.Equal([("maize-stover", 14m, "wheelbarrow"), ("goat-manure", 3m, "sack")], items);
        Assert.Empty(talker.Farmer.UnknownWords);
        Assert.Null(talker.Farmer.Concern);
    }

    [Fact]
    public void Explained_WhileAskedStepByStep_LeavesNoStepOut()
    {
        var talker = Joined().Hear("3 sacks zorbix, 2 basins blorpy", "1");
        Assert.Contains("dry stalks", talker.Said, StringComparison.Ordinal);

        talker.Words.Set([new("41", "zorbix", "en", "goat-manure"), new("41", "blorpy", "en", "wood-ash")]);
        talker.Wake();

        Assert.Contains("dry stalks", talker.Said, StringComparison.Ordinal);
        Assert.Equal(["goat-manure", "wood-ash"], talker.Farmer!.Draft!.Items.Select(item => item.Material).Order());
    }

    [Fact]
    public void Explained_AfterTheRecipeWasSent_IsToldWithoutChangingIt()
    {
        var talker = WithRecipe();
        var heap = talker.Heap;

        talker.Explain("zorbix", "goat-manure");

        Assert.Contains("From now on we know it", Assert.Single(talker.Says).Text, StringComparison.Ordinal);
        Assert.Equal(heap, talker.Heap);
        talker.Hear("20 wheelbarrows maize stalks, 3 sacks zorbix");
        Assert.Contains("goat-manure", Stock(talker));
    }

    [Fact]
    public void Explained_AsWhatNeverGoesIn_SaysWhatToDoWithIt()
    {
        var talker = WithRecipe().Explain("zorbix", "plastic");

        Assert.Equal("Trainer, Marula Flats says \"zorbix\" is plastic.", talker.Says[0].Text);
        Assert.StartsWith("Keep out of the heap: plastic.", talker.Says[1].Text);
    }

    [Fact]
    public void Explained_AsNothing_SaysSo()
    {
        var talker = WithRecipe().Explain("zorbix", null);

        Assert.Equal("Trainer, Marula Flats says \"zorbix\" is nothing for the heap, so we leave it out.", talker.Said);
        Assert.Null(talker.Farmer!.Concern);
    }

    [Fact]
    public void Explained_InTheNight_IsToldInTheMorning()
    {
        var talker = WithRecipe();
        talker.Now = Instant.FromUtc(2026, 3, 2, 20, 0);

        talker.Explain("zorbix", "goat-manure");
        Assert.Empty(talker.Says);

        var told = talker.Pass(Duration.FromHours(24));
        Assert.Equal(Instant.FromUtc(2026, 3, 3, 4, 0), told[0].At);
        Assert.Contains("goat manure", told[0].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Explained_ToAFarmerWhoStopped_IsNotTold()
    {
        var talker = WithRecipe().Hear("stop").Explain("zorbix", "goat-manure");

        Assert.Empty(talker.Says);
        Assert.Null(talker.NextDue);
    }

    [Fact]
    public void Explained_OneOfTwo_LeavesTheOtherWithTheTrainer()
    {
        var talker = Joined().Hear("14 buckets cow dung, 3 sacks zorbix, 2 basins blorpy")
            .Explain("zorbix", "dry-grass");

        Assert.Equal("blorpy", Assert.Single(talker.Farmer!.UnknownWords).Word);
        Assert.Equal(ConcernReason.UnknownWord, talker.Farmer.Concern?.Reason);
    }

    [Fact]
    public void Explained_InAnotherDistrict_IsNotUnderstoodHere()
    {
        var talker = Joined();
        talker.Words.Set([new("another", "zorbix", "en", "goat-manure")]);

        talker.Hear("3 sacks zorbix, 14 buckets cow dung");

        Assert.Equal(Told, talker.Says[0].Text);
    }

    [Fact]
    public void DistrictOf_GroupWithoutOne_IsTheGroupItself()
    {
        var office = new Office { GroupDistricts = new Dictionary<int, string> { [42] = "Ziwani" } };

        Assert.Equal(("41", "Ziwani"), (office.DistrictOf(41), office.DistrictOf(42)));
    }

    [Fact]
    public void UnknownWord_InAReportOnAHeap_IsNoStock()
    {
        var talker = Talker.WithHeap().Hear("i poured 3 buckets zorbix");

        Assert.Empty(talker.Farmer!.UnknownWords);
    }

    private static Talker Joined() => new Talker().Hear("join 41", "yes");

    private static Talker WithRecipe() => Joined().Hear(
        "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 3 sacks zorbix, 14 buckets cow dung");

    private static IEnumerable<string> Stock(Talker talker) => talker.Farmer!.Stage == Stage.Building
        ? talker.Heap.Stock.Select(p => p.Material)
        : talker.Farmer.Draft!.Items.Select(i => i.Material);
}
