using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>Some of a material in a trial, by its share of the volume.</summary>
internal sealed record Share(string Material, double Volume)
{
    internal double? DensityKgPerM3 { get; init; }

    internal double? MoisturePercent { get; init; }

    internal ForecastPart Of(double cubicMetres) => new(
        Material,
        cubicMetres * (DensityKgPerM3 ?? TableDensity),
        new GivenFigures { MoisturePercent = MoisturePercent, DensityKgPerM3 = DensityKgPerM3 });

    private double TableDensity => MaterialTable.TryFind(Material, out var known)
        ? known.Figures!.Density.KilogramsPerCubicMetre
        : throw new InvalidOperationException(Material);
}

/// <summary>A heap as a study describes it, or as assumed where it does not.</summary>
internal static class TrialHeap
{
    /// <summary>A heap of given shares of volume, watered to a moisture where it is drier, never turned.</summary>
    internal static ForecastRequest Of(double cubicMetres, double moisturePercent, params Share[] shares)
    {
        var whole = shares.Sum(share => share.Volume);
        List<ForecastPart> parts = [.. shares.Select(share => share.Of(share.Volume / whole * cubicMetres))];
        var problem = new MixProblem
        {
            Parts = [.. parts.Select(part => new MixPart(part.Material, part.MassKg, part.Given))],
            TargetMoisturePercent = moisturePercent,
        };
        var mix = Assert.IsType<MixResult.Solved>(MixSolver.Solve(problem)).Mix;
        return new ForecastRequest
        {
            Parts = parts,
            WaterLitres = mix.WaterToAdd.Litres,
            VolumeLitres = cubicMetres * 1000,
            TurnDays = [],
        };
    }

    /// <summary>The heap turned every so many days.</summary>
    internal static ForecastRequest TurnedEvery(this ForecastRequest heap, int days) =>
        heap with { TurnDays = [.. Enumerable.Range(1, heap.Days / days).Select(i => i * days)] };

    /// <summary>The same matter pressed into less space.</summary>
    internal static ForecastRequest PressedTo(this ForecastRequest heap, double share) =>
        heap with { VolumeLitres = heap.VolumeLitres * share };
}
