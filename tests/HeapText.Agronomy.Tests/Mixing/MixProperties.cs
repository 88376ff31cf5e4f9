using CsCheck;
using HeapText.Agronomy.Mixing;

namespace HeapText.Agronomy.Tests.Mixing;

public class MixProperties
{
    private static readonly Gen<MixPart> Part = Gen.Select(
        Gen.Double[0.01, 500], Gen.Double[0, 95], Gen.Double[5, 60], Gen.Double[0.05, 15],
        (mass, moisture, carbon, nitrogen) => new MixPart(null, mass, new GivenFigures
        {
            MoisturePercent = moisture,
            CarbonPercent = carbon,
            NitrogenPercent = nitrogen,
        }));

    private static readonly Gen<MixPart[]> Parts = Part.Array[1, 10];

    [Fact]
    public void Mix_OfAnyParts_ConservesMass() => Parts.Sample(parts =>
    {
        var mix = Solve(parts);

        Close(parts.Sum(part => part.MassKg), mix.Fresh.Kilograms);
        Close(parts.Sum(part => part.MassKg * (1 - (part.Given.MoisturePercent!.Value / 100))), mix.Dry.Kilograms);
    });

    [Fact]
    public void Mix_InAnyOrder_IsTheSame() => Gen.Select(Parts, Gen.Int).Sample((parts, seed) =>
    {
        var shuffled = (MixPart[])parts.Clone();
        new Random(seed).Shuffle(shuffled);

        var (mix, other) = (Solve(parts), Solve(shuffled));

        Close(mix.CarbonNitrogen!.Value, other.CarbonNitrogen!.Value);
        Close(mix.Moisture.Value, other.Moisture.Value);
        Close(mix.WaterToAdd.Litres, other.WaterToAdd.Litres);
    });

    [Fact]
    public void CarbonNitrogen_OfAMix_LiesBetweenThatOfItsParts() => Parts.Sample(parts =>
    {
        var ratios = parts.Select(part => part.Given.CarbonPercent!.Value / part.Given.NitrogenPercent!.Value).ToList();

        var ratio = Solve(parts).CarbonNitrogen!.Value;

        Assert.InRange(ratio, ratios.Min() * (1 - 1e-9), ratios.Max() * (1 + 1e-9));
    });

    [Fact]
    public void Water_PouredOn_NeverLowersMoisture() => Gen.Select(Parts, Gen.Double[0, 1000]).Sample((parts, litres) =>
    {
        var water = new MixPart(null, litres, new GivenFigures
        {
            MoisturePercent = 100,
            CarbonPercent = 0,
            NitrogenPercent = 0,
        });

        var (before, after) = (Solve(parts), Solve([.. parts, water]));

        Assert.True(after.Moisture.Value >= before.Moisture.Value - 1e-12);
    });

    [Fact]
    public void Water_Added_ReachesTheMoistureSought() => Gen.Select(Parts, Gen.Double[0, 99]).Sample((parts, target) =>
    {
        var mix = Solve(parts, target);

        var moisture = 1 - (mix.Dry.Kilograms / (mix.Fresh.Kilograms + mix.WaterToAdd.Litres));

        Close(Math.Max(target / 100, mix.Moisture.Value), moisture);
    });

    private static Mix Solve(MixPart[] parts, double target = 55)
    {
        var problem = new MixProblem { Parts = parts, TargetMoisturePercent = target };
        return Assert.IsType<MixResult.Solved>(MixSolver.Solve(problem)).Mix;
    }

    private static void Close(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Max(1, Math.Abs(expected)), $"{expected} {actual}");
}
