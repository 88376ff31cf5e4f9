using HeapText.Agronomy.Use;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Engine;

public sealed class UsingTests
{
    private static readonly string[] Joined = ["join 41", "yes"];

    [Fact]
    public void CropPerPlant_IsToldForEachAndForAll()
    {
        var talker = new Talker().Hear([.. Joined, "crop", "banana", "10"]);

        Assert.Contains("2 buckets of ready compost for each", talker.Said, StringComparison.Ordinal);
        Assert.Contains("about 20 buckets", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void CropOnLand_IsAskedForLengthAndWidth()
    {
        // Common practice, from memory: 1.5 kg to a square metre; 12 kg to a bucket.
        var talker = new Talker().Hear([.. Joined, "how much compost for tomatoes", "20", "4"]);

        Assert.Contains("about 10 buckets", talker.Said, StringComparison.Ordinal);
        Assert.Contains("8 steps long", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void CropNamedInTheQuestion_IsNotAskedForAgain() =>
        Assert.Equal(Stage.AskingPlants,
            new Talker().Hear([.. Joined, "how much compost per hole for avocado"]).Farmer!.Stage);

    [Fact]
    public void OpenQuestion_IsAskedAgainAfterTheAmounts()
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..5]);

        talker.Hear("crop", "maize", "10", "10");

        Assert.Equal(Stage.AskingRod, talker.Farmer!.Stage);
        Assert.Contains("What is your rod?", talker.Said, StringComparison.Ordinal);
        Assert.Null(talker.Farmer.Side);
    }

    [Fact]
    public void PricesSet_SayWhatItIsWorth()
    {
        var prices = new LocalPrices("KES", new Dictionary<string, double> { ["urea"] = 100 });
        var talker = new Talker(office: new Office { Prices = prices }).Hear([.. Joined, "crop", "5", "100"]);

        // 2,400 kg at 40 % moisture and 0.9 % N: 13 kg N, 15 % of it in the first year, as 4.2 kg urea.
        Assert.Contains("KES 420", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void NoPrices_SayNothingOfMoney() =>
        Assert.DoesNotContain("save", new Talker().Hear([.. Joined, "crop", "5", "100"]).Said,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("crop", "salad", "4 months")]
    [InlineData("crop", "maize", "3 months")]
    public void HeatOfTheHeapUnknown_TellsTheIntervalBeforeHarvest(string ask, string crop, string interval) =>
        Assert.Contains(interval, new Talker().Hear([.. Joined, ask, crop, "5", "5"]).Said, StringComparison.Ordinal);

    [Theory]
    [InlineData("coffee", "50 holes", "For 50")]
    [InlineData("banana", "30 banana plants", "For 30")]
    [InlineData("nursery", "2000", "For 2000 pots")]
    [InlineData("nursery", "about 200 pots", "For 200 pots")]
    public void CountWithAWord_IsUnderstood(string crop, string count, string told) =>
        Assert.Contains(told, new Talker().Hear([.. Joined, "crop", crop, count]).Said, StringComparison.Ordinal);

    [Theory]
    [InlineData("20 steps", "4 m")]
    [InlineData("20 long steps", "about 4")]
    [InlineData("20", "4 steps wide")]
    public void StepsWithAWord_AreUnderstood(string length, string width) =>
        Assert.Contains("about 10 buckets",
            new Talker().Hear([.. Joined, "crop", "vegetables", length, width]).Said, StringComparison.Ordinal);

    [Fact]
    public void LengthAndWidthTogether_AreNotAskedForTwice() =>
        Assert.Contains("about 10 buckets", new Talker().Hear([.. Joined, "crop", "vegetables", "20 by 4 steps"]).Said,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("-5 plants")]
    [InlineData("10000")]
    [InlineData("0")]
    [InlineData("2.5 plants")]
    public void CountThatCannotBe_IsAskedAgain(string count) =>
        Assert.Equal(Stage.AskingPlants, new Talker().Hear([.. Joined, "crop", "banana", count]).Farmer!.Stage);

    [Fact]
    public void CropAmongOtherWords_IsUnderstoodWhereItIsAsked() =>
        Assert.Equal("maize", new Talker().Hear([.. Joined, "crop", "for my maize please"]).Farmer!.Side!.Crop);

    [Fact]
    public void StockTextedWhereACropIsAsked_IsStock() =>
        Assert.Equal(["maize-stover"], new Talker().Hear([.. Joined, "crop", "8 sacks maize stalks"])
            .Farmer!.Draft!.Items.Select(item => item.Material));

    [Fact]
    public void HeapWithoutManure_NeedsNoDaysBeforeHarvest()
    {
        var talker = Talker.WithHeap();
        var plan = talker.Heap.Plan with { PerRound = [new Portion("maize-stover", 4, "wheelbarrow")] };
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap.To(HeapStep.Ready, null) with { Plan = plan }] };

        talker.Hear("crop", "salad", "5", "5");

        Assert.DoesNotContain("months", talker.Said, StringComparison.Ordinal);
    }
}
