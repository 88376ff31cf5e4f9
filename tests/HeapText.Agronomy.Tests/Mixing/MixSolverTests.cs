using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Tests.Reference;
using static HeapText.Agronomy.Tests.Reference.ReferenceRows;

namespace HeapText.Agronomy.Tests.Mixing;

public class MixSolverTests
{
    public static TheoryData<string, string, double, double, string> Mixes() =>
        [.. ReferenceRows.Of("mixes.csv").Select(row => (row[0], row[1], Number(row[2]), Number(row[3]), row[4]))];

    [Theory]
    [MemberData(nameof(Mixes))]
    public void Mix_OfAPublishedExample_Agrees(
        string id, string figure, double expected, double tolerance, string parts)
    {
        var mix = Solved([.. parts.Split("; ").Select(Part)]);

        var actual = figure switch
        {
            "cn" => mix.CarbonNitrogen!.Value,
            "moisturePercent" => mix.Moisture.Percent,
            _ => mix.WaterToAdd.Litres,
        };

        Assert.True(Math.Abs(actual - expected) <= tolerance, $"{id}: {actual}");
    }

    [Fact]
    public void Water_OfADerivedExample_Agrees()
    {
        foreach (var row in ReferenceRows.Of("water.csv"))
        {
            var part = new MixPart(null, Number(row[1]), Figures(Number(row[2]), 45, 1));

            var result = MixSolver.Solve(new MixProblem { Parts = [part], TargetMoisturePercent = Number(row[3]) });

            var mix = Assert.IsType<MixResult.Solved>(result).Mix;
            Assert.Equal(Number(row[4]), mix.WaterToAdd.Litres, Number(row[5]));
        }
    }

    [Fact]
    public void Charcoal_InAMix_FeedsNoMicrobes()
    {
        var without = Solved(new MixPart("maize-stover", 10, GivenFigures.None));

        var with = Solved(
            new MixPart("maize-stover", 10, GivenFigures.None),
            new MixPart("charcoal", 5, new GivenFigures { CarbonPercent = 80, NitrogenPercent = 1 }));

        Assert.Equal(without.Carbon, with.Carbon);
        Assert.Equal(without.CarbonNitrogen, with.CarbonNitrogen);
        Assert.Equal(15, with.Fresh.Kilograms);
    }

    [Fact]
    public void CarbonNitrogen_WithoutNitrogen_IsUnknown() =>
        Assert.Null(Solved(new MixPart("wood-ash", 3, GivenFigures.None)).CarbonNitrogen);

    // Maize stover in the table: N 0.7 %, C/N 65, so C 45.5 %.
    [Theory]
    [InlineData(null, null, 91.0, 45.5, 0.5)]
    [InlineData(null, 1.0, null, 45.5, 1.0)]
    [InlineData(42.0, null, null, 42.0, 0.7)]
    [InlineData(42.0, 0.6, null, 42.0, 0.6)]
    [InlineData(42.0, null, 60.0, 42.0, 0.7)]
    [InlineData(null, 0.6, 70.0, 42.0, 0.6)]
    [InlineData(42.0, 0.6, 70.0, 42.0, 0.6)]
    public void GivenFigures_OfAKnownMaterial_KeepTheTablesCarbon(
        double? carbon, double? nitrogen, double? ratio, double carbonPercent, double nitrogenPercent)
    {
        var given = new GivenFigures { CarbonPercent = carbon, NitrogenPercent = nitrogen, CarbonNitrogen = ratio };

        var mix = Solved(new MixPart("maize-stover", 1, given));

        Assert.Equal(carbonPercent, mix.Carbon!.Value.Kilograms / mix.Dry.Kilograms * 100, 9);
        Assert.Equal(nitrogenPercent, mix.Nitrogen!.Value.Kilograms / mix.Dry.Kilograms * 100, 9);
    }

    [Theory]
    [InlineData(null, 40.0, 2.0, null, null, "moisturePercent")]
    [InlineData(null, 40.0, null, null, 50.0, "nitrogenPercent")]
    [InlineData(null, null, 2.0, null, 50.0, "carbonPercent")]
    [InlineData(null, null, null, 20.0, 50.0, "nitrogenPercent")]
    [InlineData(null, 40.0, 2.0, 30.0, 50.0, "cn")]
    [InlineData(null, null, 4.0, 30.0, 50.0, "cn")]
    [InlineData(null, 101.0, 2.0, null, 50.0, "carbonPercent")]
    [InlineData(null, 40.0, -1.0, null, 50.0, "nitrogenPercent")]
    [InlineData(null, 40.0, null, 0.0, 50.0, "cn")]
    [InlineData("cow-dung", null, null, null, 100.5, "moisturePercent")]
    [InlineData("cow-dung", null, null, double.NaN, null, "cn")]
    [InlineData("plastic", null, null, null, null, "material")]
    [InlineData("unheard-of", null, null, null, null, "material")]
    public void Part_ThatCannotBe_IsNamedWithItsField(
        string? material, double? carbon, double? nitrogen, double? ratio, double? moisture, string field)
    {
        var given = new GivenFigures
        {
            CarbonPercent = carbon,
            NitrogenPercent = nitrogen,
            CarbonNitrogen = ratio,
            MoisturePercent = moisture,
        };
        var good = new MixPart("maize-stover", 1, GivenFigures.None);

        var result = MixSolver.Solve(new MixProblem { Parts = [good, new MixPart(material, 1, given)] });

        Assert.Equal($"parts[1].{field}", Assert.IsType<MixResult.Faulty>(result).Fault.Field);
    }

    [Theory]
    [InlineData(-1, 55, "parts[0].massKg")]
    [InlineData(double.NaN, 55, "parts[0].massKg")]
    [InlineData(2e6, 55, "parts[0].massKg")]
    [InlineData(0, 55, "parts")]
    [InlineData(1, 100, "targetMoisturePercent")]
    [InlineData(1, double.NaN, "targetMoisturePercent")]
    public void Mix_ThatCannotBe_IsNamedWithItsField(double mass, double target, string field)
    {
        var problem = new MixProblem
        {
            Parts = [new MixPart("cow-dung", mass, GivenFigures.None)],
            TargetMoisturePercent = target,
        };

        Assert.Equal(field, Assert.IsType<MixResult.Faulty>(MixSolver.Solve(problem)).Fault.Field);
    }

    [Fact]
    public void Mix_OfNothing_IsRefused()
    {
        var result = MixSolver.Solve(new MixProblem { Parts = [] });

        Assert.Equal("parts", Assert.IsType<MixResult.Faulty>(result).Fault.Field);
    }

    private static Mix Solved(params MixPart[] parts) =>
        Assert.IsType<MixResult.Solved>(MixSolver.Solve(new MixProblem { Parts = parts })).Mix;

    private static MixPart Part(string text)
    {
        var cells = text.Split(' ').Select(Number).ToArray();
        return new MixPart(null, cells[0], Figures(cells[1], cells[2], cells[3]));
    }

    private static GivenFigures Figures(double moisture, double carbon, double nitrogen) =>
        new() { MoisturePercent = moisture, CarbonPercent = carbon, NitrogenPercent = nitrogen };
}
