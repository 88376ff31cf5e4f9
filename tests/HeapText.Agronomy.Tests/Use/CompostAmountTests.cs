using CsCheck;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class CompostAmountTests
{
    [Theory]
    [InlineData(12, 1)]
    [InlineData(24, 2)]
    [InlineData(20, 1.5)]
    [InlineData(125, 10)]
    [InlineData(148, 12)]
    [InlineData(1486, 120)]
    [InlineData(0, 0)]
    public void Buckets_OfAMass_AreRoundedToWhatCanBeCarriedInTheHead(double kilograms, double buckets) =>
        Assert.Equal(buckets, CompostAmount.Buckets(Mass.FromKilograms(kilograms)));

    // A 20-litre bucket of compost weighs 10-13 kg, derived from densities.
    [Fact]
    public void Buckets_One_WeighsWhatABucketOfCompostDoes() =>
        Assert.InRange(new CompostAmount(1, "bucket").ToMass().Kilograms, 10, 13);

    [Theory]
    [InlineData("vegetables", 1, "handful")]
    [InlineData("maize", 0.5, "handful")]
    [InlineData("nursery", 0.5, "handful")]
    [InlineData("coffee", 1, "bucket")]
    [InlineData("banana", 2, "bucket")]
    public void Of_OnePlant_IsToldInHandfulsOrBuckets(string key, double amount, string measure) =>
        Assert.Equal(new CompostAmount(amount, measure), CompostAmount.Of(PlantRate(key)));

    [Theory]
    [InlineData("beans")]
    [InlineData("salad")]
    public void Of_PlantThatGetsLessThanAHandCanMeasure_IsNothing(string key) =>
        Assert.Null(CompostAmount.Of(PlantRate(key)));

    [Fact]
    public void Of_OnePlantOfAnyCrop_StaysWithinTheHighRate() => Assert.All(CropTable.All, crop =>
        Assert.True((CompostAmount.Of(PlantRate(crop.Key))?.ToMass().Kilograms ?? 0) <= crop.PerPlant.High + 1e-9));

    [Fact]
    public void SquareMetresOfOneBucket_OfAnyCropOfTheField_StayWithinTheHighRate() => Assert.All(
        CropTable.All.Where(crop => crop.Basis == RateBasis.Area),
        crop => Assert.True(12 / CompostAmount.SquareMetresOfOneBucket(crop.PerM2.Typical) <= crop.PerM2.High));

    [Theory]
    [InlineData(1.5, 8)]
    [InlineData(0.62, 19)]
    [InlineData(50, 1)]
    public void SquareMetresOfOneBucket_OfARate_AreWhole(double rate, double squareMetres) =>
        Assert.Equal(squareMetres, CompostAmount.SquareMetresOfOneBucket(rate));

    [Fact]
    public void Of_DistrictsOwnBucket_CountsItsBuckets()
    {
        var small = Measures.Default.With(new Dictionary<string, double> { ["bucket"] = 10 });

        Assert.Equal(new CompostAmount(2, "bucket"), CompostAmount.Of(Mass.FromKilograms(12), small));
        Assert.Equal(4, CompostAmount.SquareMetresOfOneBucket(1.5, small));
    }

    [Fact]
    public void Of_AnyMass_MissesItByAFifthAtMostFromOneMeasureOn() => Gen.Double[0.3, 1e5].Sample(kilograms =>
    {
        var amount = CompostAmount.Of(Mass.FromKilograms(kilograms))!.Value;

        if (amount.Amount > 1)
            Assert.InRange(amount.ToMass().Kilograms / kilograms, 0.8, 1.2);
    });

    private static Mass PlantRate(string key) =>
        Mass.FromKilograms(CropTable.All.Single(crop => crop.Key == key).PerPlant.Typical);
}
