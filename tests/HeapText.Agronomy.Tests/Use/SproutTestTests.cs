using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class SproutTestTests
{
    // Univ. Florida IFAS, Compost Maturity Tests, read: 3/4 or more sprout and grow.
    [Theory]
    [InlineData(8, 6, SproutVerdict.Mature)]
    [InlineData(8, 5, SproutVerdict.Immature)]
    [InlineData(10, 8, SproutVerdict.Mature)]
    [InlineData(10, 7, SproutVerdict.Immature)]
    [InlineData(int.MaxValue, int.MaxValue, SproutVerdict.Mature)]
    public void Judge_WithoutSoilBesideIt_WantsThreeOfFour(int sown, int grown, SproutVerdict verdict) =>
        Assert.Equal(verdict, SproutTest.Judge(sown, grown));

    // CCQC 2001 / TMECC 05.05, from memory: above 90 % of the control very mature, 80-90 mature, below 80 immature.
    [Theory]
    [InlineData(20, 19, 20, SproutVerdict.VeryMature)]
    [InlineData(20, 18, 20, SproutVerdict.Mature)]
    [InlineData(20, 16, 20, SproutVerdict.Mature)]
    [InlineData(20, 15, 20, SproutVerdict.Immature)]
    [InlineData(20, 18, 15, SproutVerdict.VeryMature)]
    [InlineData(20, 14, 14, SproutVerdict.PoorSeed)]
    public void Judge_WithSoilBesideIt_ComparesWithTheSoil(int sown, int grown, int inSoil, SproutVerdict verdict) =>
        Assert.Equal(verdict, SproutTest.Judge(sown, grown, inSoil));

    [Fact]
    public void Judge_AFewSeeds_SaysNothing() =>
        Assert.Equal(SproutVerdict.TooFewSeeds, SproutTest.Judge(7, 7));

    [Theory]
    [InlineData(0, 0, null)]
    [InlineData(8, 9, null)]
    [InlineData(8, -1, null)]
    [InlineData(8, 8, 9)]
    [InlineData(8, 8, -1)]
    public void Judge_CountsThatCannotBe_AreRefused(int sown, int grown, int? inSoil) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SproutTest.Judge(sown, grown, inSoil));

    // Dewar classes, from memory: 0-10 K class V, 10-20 IV, 20-30 III, 30-40 II, above 40 I.
    [Theory]
    [InlineData(-1, 5)]
    [InlineData(10, 5)]
    [InlineData(15, 4)]
    [InlineData(25, 3)]
    [InlineData(35, 2)]
    [InlineData(41, 1)]
    public void SelfHeating_ByItsRise_HasItsClass(double rise, int expected) =>
        Assert.Equal(expected, SelfHeating.ClassOf(rise));

    [Fact]
    public void SelfHeating_OfNoNumber_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SelfHeating.ClassOf(double.NaN));
}
