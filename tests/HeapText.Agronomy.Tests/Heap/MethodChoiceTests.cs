using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class MethodChoiceTests
{
    private static IEnumerable<HeapSite> Every =>
        from rain in (Rain?[])[null, Rain.Dry, Rain.Some, Rain.Heavy]
        from water in (Water?[])[null, Water.Near, Water.Far]
        from labour in (Labour?[])[null, Labour.Often, Labour.Sometimes, Labour.Little]
        from litres in (double?[])[null, 0, 499, 500, 999, 1000, 5000]
        select new HeapSite(rain, water, labour, litres);

    [Fact]
    public void For_EveryPlace_GivesAKnownMethodWithReasons()
    {
        Assert.All(Every, site =>
        {
            var choice = MethodChoice.For(site);
            Assert.Contains(choice.Key, HeapMethods.All.Keys);
            Assert.NotEmpty(choice.Reasons);
            Assert.Empty(choice.Reasons.Except(MethodReasons.All));
            Assert.Empty(choice.RunnersUp.Except(HeapMethods.All.Keys));
            Assert.DoesNotContain(choice.Key, choice.RunnersUp);
        });
    }

    /// <summary>Howard, as told by Solomon: pits fill with water in the monsoon, heaps then.</summary>
    [Fact]
    public void For_HeavyRain_IsNeverAPit()
    {
        var wet = Every.Where(site => site.Rain == Rain.Heavy).Select(MethodChoice.For);

        Assert.All(wet, choice => Assert.DoesNotContain("dry-season-pit", choice.RunnersUp.Append(choice.Key)));
    }

    [Fact]
    public void For_EveryPlace_AsksNoMoreMaterialThanThereIs() =>
        Assert.All(
            Every.Where(site => site.Litres >= 500),
            site => Assert.True(HeapMethods.All[MethodChoice.For(site).Key].Bounds.LeastLitres <= site.Litres));

    [Fact]
    public void For_WaterFarOrLittleLabour_IsNeverTurnedOften()
    {
        var hard = Every.Where(site => site.Water == Water.Far || site.Labour == Labour.Little)
            .Select(MethodChoice.For);

        Assert.All(hard, choice => Assert.DoesNotContain("hot-turned", choice.RunnersUp.Append(choice.Key)));
    }

    /// <summary>The organic farmer guide and Müller-Sämann: a pit where it is dry, a heap where it is wet. The rest:
    /// common practice, no source.</summary>
    [Theory]
    [InlineData(null, null, null, null, "daily-then-weekly", "usual")]
    [InlineData(Rain.Dry, Water.Far, Labour.Often, 3000.0, "dry-season-pit", "dry-season water-far")]
    [InlineData(Rain.Dry, Water.Far, Labour.Little, null, "dry-season-pit", "dry-season water-far")]
    [InlineData(Rain.Dry, null, null, null, "dry-season-pit", "dry-season")]
    [InlineData(Rain.Dry, Water.Near, Labour.Often, null, "hot-turned", "water-near often-labour")]
    [InlineData(Rain.Heavy, Water.Far, Labour.Little, null, "slow-heap", "little-labour heavy-rain")]
    [InlineData(Rain.Some, Water.Far, Labour.Often, null, "daily-then-weekly", "usual")]
    [InlineData(Rain.Some, Water.Near, Labour.Sometimes, 1000.0, "daily-then-weekly", "usual")]
    [InlineData(Rain.Some, Water.Near, Labour.Often, 999.0, "small-ring", "little-material")]
    [InlineData(Rain.Dry, Water.Far, null, 499.0, "small-ring", "gather-more")]
    public void For_APlace_IsTheMethodOfTheTable(
        Rain? rain, Water? water, Labour? labour, double? litres, string key, string reasons)
    {
        var choice = MethodChoice.For(new HeapSite(rain, water, labour, litres));

        Assert.Equal((key, reasons), (choice.Key, string.Join(' ', choice.Reasons)));
    }

    [Fact]
    public void For_TooLittleMaterial_NamesWhatMoreWouldMake() =>
        Assert.Equal(
            ["hot-turned"],
            MethodChoice.For(new HeapSite(Rain.Some, Water.Near, Labour.Often, 600)).RunnersUp);

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void For_LitresThatCannotBe_Throws(double litres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MethodChoice.For(new HeapSite(Litres: litres)));
}
