using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class FertiliserTests
{
    // Standard atomic masses, abridged (IUPAC), from memory. [g/mol]
    private const double P = 30.974;
    private const double K = 39.098;
    private const double O = 15.999;

    [Fact]
    public void OxideFactors_FromAtomicMasses_AreThose()
    {
        Assert.Equal(2 * P / ((2 * P) + (5 * O)), Fertiliser.PhosphorusInPhosphate.Value, tolerance: 0.0001);
        Assert.Equal(2 * K / ((2 * K) + O), Fertiliser.PotassiumInPotash.Value, tolerance: 0.0001);
    }

    [Fact]
    public void Fertilisers_All_HoldNitrogenAndStateASource() => Assert.All(FertiliserTable.All, one =>
    {
        Assert.True(one.Nitrogen.Value > 0);
        Assert.InRange(one.Nitrogen.Value + one.Phosphate.Value + one.Potash.Value, 0, 1);
        Assert.NotEmpty(one.Source);
    });

    [Fact]
    public void CarryingNitrogen_OfUrea_IsMoreThanTheNitrogen()
    {
        Assert.True(FertiliserTable.TryFind("urea", out var urea));

        Assert.Equal(100, urea.CarryingNitrogen(Mass.FromKilograms(46)).Kilograms, 9);
        Assert.False(urea.IsCompound);
    }

    [Theory]
    [InlineData("urea", 0, "urea")]
    [InlineData("urea", -1, "urea")]
    [InlineData("urea", double.NaN, "urea")]
    [InlineData("urea", 1e7, "urea")]
    [InlineData("guano", 5, "guano")]
    public void Check_PriceThatCannotBe_NamesIt(string key, double price, string field) =>
        Assert.Equal(field, FertiliserTable.Check(new Dictionary<string, double> { [key] = price })?.Field);

    [Fact]
    public void Check_GoodPrices_FindsNone() =>
        Assert.Null(FertiliserTable.Check(new Dictionary<string, double> { ["urea"] = 120, ["dap"] = 1 }));
}
