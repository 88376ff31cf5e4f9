using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class CropTableTests
{
    [Theory]
    [InlineData("vegetables")]
    [InlineData("salad")]
    [InlineData("maize")]
    [InlineData("beans")]
    [InlineData("banana")]
    [InlineData("coffee")]
    [InlineData("coffee-tree")]
    [InlineData("fruit-tree")]
    [InlineData("nursery")]
    public void Crop_ByItsKey_IsFound(string key) => Assert.True(CropTable.TryFind(key, out _));

    [Theory]
    [InlineData("Maize")]
    [InlineData("rice")]
    [InlineData(null)]
    public void Crop_OfAnUnknownKey_IsNotFound(string? key) => Assert.False(CropTable.TryFind(key, out _));

    [Fact]
    public void Rates_OfEveryCrop_AreOrderedSourcedAndAgree() => Assert.All(CropTable.All, crop =>
    {
        Assert.NotEmpty(crop.Source);
        Assert.Matches("^[ACD]", crop.Confidence);
        Assert.InRange(crop.PerM2.Typical, crop.PerM2.Low, crop.PerM2.High);
        Assert.Equal(crop.PerM2.Typical, crop.PerPlant.Typical * crop.PlantsPerM2, 12);
        Assert.Equal(crop.Basis == RateBasis.Mix, crop.MixShare is not null);
    });

    // 20 t/ha is the most tried on young bananas (Tierra Tropical 10(1), 2014); beds of vegetables take up to 3-5
    // kg/m2, from memory. No rate asks for more over a field than that.
    [Fact]
    public void Rates_OverAField_StayBelowWhatWasTried() =>
        Assert.All(CropTable.All.Where(crop => crop.Basis != RateBasis.Mix), crop =>
            Assert.InRange(crop.PerM2.High, 0.1, crop.Key == "banana" ? 4.5 : 2));

    [Fact]
    public void ReadyCompost_ItsFigures_AgreeWithOldCompostInTheMaterials()
    {
        Assert.True(MaterialTable.TryFind("old-compost", out var material));

        Assert.Equal(ReadyCompost.KgPerLitre * 1000, material.Figures!.Density.KilogramsPerCubicMetre, 9);
        Assert.Equal(ReadyCompost.Moisture, material.Figures.Moisture);
    }

    // Indore compost 0.8 % N (IASRI course, read), Tigray farms 0.3-1.0 % (Teka, read).
    [Fact]
    public void ReadyCompost_ItsNitrogen_PromisesNoMoreThanFarmsMeasured() =>
        Assert.InRange(ReadyCompost.Nitrogen.Percent, 0.8, 1.0);
}
