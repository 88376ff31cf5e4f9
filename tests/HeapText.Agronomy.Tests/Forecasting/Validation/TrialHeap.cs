using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>A heap as a study describes it, or as we assume where it does not.</summary>
internal static class TrialHeap
{
    /// <summary>A heap of given shares of volume, watered to a moisture where it is drier.</summary>
    internal static ForecastRequest Of(
        double cubicMetres, double moisturePercent, params (string Material, double Share)[] shares)
    {
        var whole = shares.Sum(share => share.Share);
        List<ForecastPart> parts = [.. shares.Select(share => new ForecastPart(
            share.Material, share.Share / whole * cubicMetres * DensityOf(share.Material)))];
        var problem = new MixProblem
        {
            Parts = [.. parts.Select(part => new MixPart(part.Material, part.MassKg, GivenFigures.None))],
            TargetMoisturePercent = moisturePercent,
        };
        var mix = Assert.IsType<MixResult.Solved>(MixSolver.Solve(problem)).Mix;
        return new ForecastRequest
        {
            Parts = parts,
            WaterLitres = mix.WaterToAdd.Litres,
            VolumeLitres = cubicMetres * 1000,
        };
    }

    internal static ForecastRequest Standing(this ForecastRequest heap, double width, double length, double height) =>
        heap with { Dimensions = new HeapDimensions(width, length, height) };

    internal static ForecastRequest Every(this ForecastRequest heap, int days, int until) =>
        heap with { TurnDays = [.. Enumerable.Range(1, until / days).Select(i => i * days)] };

    /// <summary>C/N of the start, for saying what was assumed.</summary>
    internal static double CarbonNitrogen(this ForecastRequest heap) =>
        Course(heap)[0].CarbonNitrogen;

    /// <summary>The heap as described, without spread.</summary>
    internal static HeapDay[] Course(this ForecastRequest heap) =>
        HeapHistory.Of(HeapStart.From(heap), Member.All[0], heap, heap.Days).Days;

    private static double DensityOf(string material) => MaterialTable.TryFind(material, out var known)
        ? known.Figures!.Density.KilogramsPerCubicMetre
        : throw new ArgumentException(material);
}
