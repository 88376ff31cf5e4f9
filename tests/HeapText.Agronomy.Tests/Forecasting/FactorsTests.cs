using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting;

public class FactorsTests
{
    // Haug 1993, from memory; values computed from his formula.
    [Theory]
    [InlineData(0.20, 0.03)]
    [InlineData(0.30, 0.15)]
    [InlineData(0.40, 0.50)]
    [InlineData(0.45, 0.71)]
    [InlineData(0.50, 0.86)]
    [InlineData(0.60, 0.97)]
    public void Moisture_OfHaugsTable_IsMet(double moisture, double factor) =>
        Assert.Equal(factor, Factors.Moisture(moisture), 0.006);

    // Haug 1993, from memory; values computed from his formula.
    [Theory]
    [InlineData(0.10, 0.25)]
    [InlineData(0.15, 0.51)]
    [InlineData(0.20, 0.78)]
    [InlineData(0.25, 0.92)]
    [InlineData(0.30, 0.97)]
    public void AirSpace_OfHaugsTable_IsMet(double space, double factor) =>
        Assert.Equal(factor, Factors.AirSpace(space), 0.006);

    // Richard & Walker 2006, from memory: cardinal temperatures about 5, 57 and 72 C.
    [Theory]
    [InlineData(4, 0, 0)]
    [InlineData(5, 0, 0)]
    [InlineData(25, 0.2, 0.4)]
    [InlineData(57, 1, 1)]
    [InlineData(65, 0.6, 0.95)]
    [InlineData(72, 0, 0)]
    [InlineData(80, 0, 0)]
    public void Temperature_AtCardinalPoints_IsNoneBestNone(double celsius, double low, double high) =>
        Assert.InRange(Factors.Temperature(celsius), low, high);

    [Theory]
    [InlineData(5, 0.5)]
    [InlineData(15, 0.75)]
    [InlineData(20, 1)]
    [InlineData(30, 1)]
    [InlineData(40, 1)]
    [InlineData(80, 0.5)]
    [InlineData(400, 0.3)]
    [InlineData(double.PositiveInfinity, 0.3)]
    public void CarbonNitrogen_AsBuilt_IsBestBetweenTwentyAndForty(double ratio, double factor) =>
        Assert.Equal(factor, Factors.CarbonNitrogen(ratio, ratio), 9);

    [Fact]
    public void CarbonNitrogen_FallenByRotting_DoesNotHinder() => Assert.Equal(1, Factors.CarbonNitrogen(30, 12));

    // Psychrometric tables, from memory: saturated air of 60 C holds 0.153 kg/kg, of 25 C 0.0201.
    [Theory]
    [InlineData(25, 0.0201, 0.0002)]
    [InlineData(60, 0.153, 0.002)]
    public void Saturation_OfAir_IsThatOfTables(double celsius, double held, double tolerance) =>
        Assert.Equal(held, HeapAir.Saturation(celsius).Held, tolerance);

    [Theory]
    [InlineData(5)]
    [InlineData(40)]
    [InlineData(80)]
    public void Saturation_Slope_IsThatOfTheCurve(double celsius)
    {
        var rise = (HeapAir.Saturation(celsius + 0.01).Held - HeapAir.Saturation(celsius - 0.01).Held) / 0.02;

        Assert.Equal(rise, HeapAir.Saturation(celsius).Slope, 1e-5);
    }

    // Agnew & Leonard 2003, from memory: about 100 - 0.09 x wet bulk density [kg/m3], in per cent.
    [Theory]
    [InlineData(300)]
    [InlineData(500)]
    [InlineData(700)]
    public void AirSpace_OfMoistMatter_IsNearTheRuleOfThumb(double density)
    {
        var (organic, ash, water) = (0.35 * density, 0.05 * density, 0.6 * density);

        Assert.Equal(1 - (0.0009 * density), HeapAir.Space(organic, ash, water, 1), 0.06);
    }
}
