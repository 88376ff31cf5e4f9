using HeapText.Agronomy.Use;
using HeapText.Dialog.Engine;

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
}
