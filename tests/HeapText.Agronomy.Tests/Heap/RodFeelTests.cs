using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class RodFeelTests
{
    private const double Steel = 12000;
    private const double DryWood = 400;
    private const double WetWood = 800;
    private const double MoistCompost = 900;
    private const double PainC = 43.2; // Stoll and Greene 1959: pain begins at about 43.2 degrees C at the skin

    /// <summary>Contact of two half-spaces, worked by hand.</summary>
    [Theory]
    [InlineData(DryWood, 50, 37)]
    [InlineData(DryWood, 70, 42)]
    [InlineData(WetWood, 60, 44)]
    [InlineData(WetWood, 70, 48)]
    [InlineData(MoistCompost, 60, 45)]
    [InlineData(MoistCompost, 70, 49)]
    [InlineData(Steel, 45, 44)]
    [InlineData(Steel, 70, 66.6)]
    public void ContactC_OfAHotBody_IsTheWorkedValue(double effusivity, double bodyC, double skinC) =>
        Assert.Equal(skinC, RodFeel.ContactC(bodyC, effusivity), 0.5);

    [Fact]
    public void Band_HotOnMetal_IsPainfulThroughout() =>
        Assert.True(RodFeel.ContactC(RodFeel.Band(Heat.Hot, RodKind.Metal).LowC, Steel) > PainC);

    [Fact]
    public void Band_HotOnWood_IsPainfulOnWetWoodOnly()
    {
        var band = RodFeel.Band(Heat.Hot, RodKind.Wood);

        Assert.True(RodFeel.ContactC(band.LowC, WetWood) > PainC);
        Assert.True(RodFeel.ContactC(70, DryWood) < PainC);
    }

    [Fact]
    public void Band_EachKind_FallsWithTheFeelingAndLeavesNoGap()
    {
        foreach (var rod in (RodKind?[])[null, .. Enum.GetValues<RodKind>()])
        {
            var bands = Enum.GetValues<Heat>().Select(heat => RodFeel.Band(heat, rod)).ToList();
            Assert.All(bands, band => Assert.InRange(band.LowC, 5, band.HighC));
            Assert.All(bands.Zip(bands.Skip(1)), pair => Assert.True(pair.First.LowC > pair.Second.LowC));
            Assert.All(bands.Zip(bands.Skip(1)), pair => Assert.True(pair.First.LowC <= pair.Second.HighC));
        }
    }

    [Fact]
    public void Band_WarmOnWood_MayBeHotterThanWarmOnMetal() =>
        Assert.True(RodFeel.Band(Heat.Warm, RodKind.Wood).HighC > RodFeel.Band(Heat.Warm, RodKind.Metal).HighC);

    [Fact]
    public void Band_RodNotKnown_SpansEveryKind() =>
        Assert.Equal(new CoreBand(50, 80), RodFeel.Band(Heat.Hot, null));
}
