using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Tests.Forecasting;

public class DecayClassTests
{
    public static TheoryData<string> Keys =>
        [.. MaterialTable.All.Where(material => !material.IsRefused).Select(material => material.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Class_OfEveryMaterialThatMayGoIn_IsKnown(string key)
    {
        MaterialTable.TryFind(key, out var material);

        Assert.NotEqual("unknown", DecayClass.Of(material).Key);
    }

    [Fact]
    public void Class_OfNoKnownMaterial_IsTheUnknown() => Assert.Equal("unknown", DecayClass.Of(null).Key);

    [Fact]
    public void Classes_All_HaveSourceConfidenceAndAPossibleSplit() => Assert.All(DecayClass.All, one =>
    {
        Assert.NotEmpty(one.Source);
        Assert.NotEmpty(one.Confidence);
        Assert.InRange(one.Degradable, 0, 1);
    });

    // Degradable part of volatile solids, from memory, low confidence.
    [Theory]
    [InlineData("vegetable-waste", 0.7, 0.85)]
    [InlineData("fresh-grass", 0.6, 0.7)]
    [InlineData("cow-dung", 0.3, 0.5)]
    [InlineData("wheat-straw", 0.5, 0.6)]
    [InlineData("wood-chips", 0.2, 0.4)]
    public void Degradable_OfAMaterial_LiesWithinTheHandbookRange(string key, double low, double high)
    {
        MaterialTable.TryFind(key, out var material);

        Assert.InRange(DecayClass.Of(material).Degradable, low, high);
    }

    // Overall rates of volatile solids in the active phase, from memory, low confidence, order of magnitude: the
    // model's are at the best temperature, so up to twice the upper end is allowed.
    [Theory]
    [InlineData("vegetable-waste", 0.05, 0.30)]
    [InlineData("fresh-grass", 0.05, 0.30)]
    [InlineData("cow-dung", 0.02, 0.12)]
    [InlineData("wheat-straw", 0.01, 0.04)]
    [InlineData("wood-chips", 0.001, 0.010)]
    public void Rate_OfAMaterial_IsOfTheHandbooksSize(string key, double low, double high)
    {
        MaterialTable.TryFind(key, out var material);

        Assert.InRange(DecayClass.Of(material).OverallRate, low, high);
    }
}
