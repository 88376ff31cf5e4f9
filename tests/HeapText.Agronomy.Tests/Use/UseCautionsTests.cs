using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class UseCautionsTests
{
    private static readonly CompostState[] States = Enum.GetValues<CompostState>();
    private static readonly Hygiene[] Hygienes = Enum.GetValues<Hygiene>();

    // US 7 CFR 205.203(c)(1): 120 days where the edible part touches soil, 90 days otherwise.
    [Theory]
    [InlineData("vegetables", "raw-interval-120")]
    [InlineData("salad", "raw-interval-120")]
    [InlineData("beans", "raw-interval-120")]
    [InlineData("maize", "raw-interval-90")]
    [InlineData("banana", "raw-interval-90")]
    [InlineData("coffee", "raw-interval-90")]
    [InlineData("fruit-tree", "raw-interval-90")]
    public void For_RawOrUnfinished_TellsTheIntervalOfTheRule(string crop, string interval)
    {
        Assert.Contains(interval, Cautions(crop, CompostState.Raw, Hygiene.Unknown));
        Assert.Contains(interval, Cautions(crop, CompostState.Unfinished, Hygiene.Likely));
        Assert.Contains(interval, Cautions(crop, CompostState.Ready, Hygiene.Unlikely));
        Assert.Contains(interval, Cautions(crop, CompostState.Ready, Hygiene.Partly));
    }

    [Fact]
    public void For_EveryStateOfEveryCrop_TellsOneIntervalAtMostAndNoneOnlyWhenLikelyHot()
    {
        foreach (var (crop, state, hygiene) in
            from crop in CropTable.All from state in States from hygiene in Hygienes select (crop, state, hygiene))
        {
            var intervals = Cautions(crop.Key, state, hygiene)
                .Count(key => key.Contains("interval", StringComparison.Ordinal));

            Assert.Equal(state == CompostState.Ready && hygiene == Hygiene.Likely ? 0 : 1, intervals);
        }
    }

    [Fact]
    public void For_SaladAndHeatInDoubt_NeverAllowsIt()
    {
        Assert.Contains(UseCautions.NotOnSalad, Cautions("salad", CompostState.Raw, Hygiene.Likely));
        Assert.Contains(UseCautions.NotOnSalad, Cautions("salad", CompostState.Ready, Hygiene.Unlikely));
        Assert.Contains(UseCautions.Interval120UnlessHot, Cautions("salad", CompostState.Ready, Hygiene.Unknown));
        Assert.DoesNotContain(UseCautions.NotOnSalad, Cautions("salad", CompostState.Ready, Hygiene.Likely));
    }

    [Fact]
    public void For_UnripeCompostInPots_KeepsItFromSeedlings()
    {
        Assert.Contains(UseCautions.NotOnSeedlings, Cautions("nursery", CompostState.Unfinished, Hygiene.Likely));
        Assert.DoesNotContain(UseCautions.NotOnSeedlings, Cautions("nursery", CompostState.Ready, Hygiene.Likely));
    }

    // Scientific Reports 2019 (s41598-019-52497-8): a month before sowing; coffee planting guide: the same.
    [Theory]
    [InlineData("maize", true)]
    [InlineData("coffee", true)]
    [InlineData("coffee-tree", false)]
    [InlineData("banana", false)]
    public void For_CropStillToBePlanted_AsksForAMonth(string crop, bool asks) => Assert.Equal(
        asks, Cautions(crop, CompostState.Ready, Hygiene.Likely).Contains(UseCautions.ApplyMonthBeforeSowing));

    [Fact]
    public void For_Anything_KeepsPeopleAndWaterSafeAndDefersToLocalRules() =>
        Assert.All(CropTable.All, crop => Assert.Equal(
            [UseCautions.WashHands, UseCautions.WearGlovesDust, UseCautions.KeepFromWater, UseCautions.LocalRules],
            Cautions(crop.Key, CompostState.Ready, Hygiene.Likely).TakeLast(4)));

    [Fact]
    public void Keys_AllThatAreGiven_AreListed()
    {
        var given = from crop in CropTable.All
                    from state in States
                    from hygiene in Hygienes
                    from key in Cautions(crop.Key, state, hygiene)
                    select key;

        Assert.Equal(UseCautions.Keys.Except([UseCautions.ValueOfCompound]).Order(), given.Distinct().Order());
    }

    private static IReadOnlyList<string> Cautions(string crop, CompostState state, Hygiene hygiene) => CompostUse.For(
        new UseRequest { Crop = crop, Plants = 1, State = state, Hygiene = hygiene }).Cautions;
}
