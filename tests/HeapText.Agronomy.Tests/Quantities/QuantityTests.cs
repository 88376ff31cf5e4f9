using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Tests.Reference;

namespace HeapText.Agronomy.Tests.Quantities;

public class QuantityTests
{
    [Theory]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Amount_NotAFiniteNumberOfNoughtOrMore_IsRefused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Volume.FromLitres(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => BulkDensity.FromKilogramsPerCubicMetre(value));
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(1.001)]
    [InlineData(double.NaN)]
    public void Fraction_OutsideTheWhole_IsRefused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Fraction.FromValue(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Fraction.FromPercent(value * 100));
    }

    [Fact]
    public void Mass_TakenFromLess_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromKilograms(1) - Mass.FromKilograms(2));

    [Fact]
    public void BulkDensity_OfPublishedBuckets_Agrees()
    {
        foreach (var row in ReferenceRows.Of("bulk-density.csv"))
        {
            var (empty, full) = (ReferenceRows.Number(row[2]), ReferenceRows.Number(row[3]));
            var net = Mass.FromKilograms(full) - Mass.FromKilograms(empty);

            var density = net / Volume.FromLitres(ReferenceRows.Number(row[1]));

            Assert.Equal(ReferenceRows.Number(row[4]), density.KilogramsPerCubicMetre, 9);
        }
    }

    [Fact]
    public void Mass_ThroughDensityAndBack_IsTheSame()
    {
        var density = BulkDensity.FromKilogramsPerCubicMetre(450);

        var mass = Volume.FromLitres(20) * density;

        Assert.Equal(9, mass.Kilograms, 12);
        Assert.Equal(20, (mass / density).Litres, 12);
    }

    [Fact]
    public void Quantities_Written_ShowTheirUnits()
    {
        string[] written =
        [
            Mass.FromKilograms(1.5).ToString(),
            Volume.FromLitres(20).ToString(),
            Fraction.FromPercent(50).ToString(),
            BulkDensity.FromKilogramsPerCubicMetre(450).ToString(),
        ];

        Assert.Equal(["1.5 kg", "20 L", "50 %", "450 kg/m3"], written);
    }

    [Fact]
    public void Quantities_Compared_OrderBySize()
    {
        Assert.True(Mass.FromKilograms(1) < Mass.FromKilograms(2));
        Assert.True(Volume.FromLitres(2) >= Volume.FromLitres(2));
        Assert.True(Fraction.FromPercent(60) > Fraction.FromPercent(50));
        Assert.True(BulkDensity.FromKilogramsPerCubicMetre(1) <= BulkDensity.FromKilogramsPerCubicMetre(2));
    }
}
