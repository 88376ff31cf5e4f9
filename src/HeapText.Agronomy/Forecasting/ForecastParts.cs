using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Forecasting;

/// <summary>Makes the parts of a heap from amounts in local measures.</summary>
public static class ForecastParts
{
    // What two ways of rounding the same recipe may differ by. Chosen.
    private const double Rounding = 0.002;

    /// <summary>The parts of a heap counted in measures.</summary>
    /// <param name="total">Materials, amounts and measures, with figures that override the table.</param>
    /// <param name="measures">What each measure holds.</param>
    /// <returns>The parts, or the first fault, by its place in the list such as <c>[1].amount</c>.</returns>
    public static (IReadOnlyList<ForecastPart>? Parts, InputFault? Fault) Measured(
        IReadOnlyList<StockItem> total, Measures measures)
    {
        List<ForecastPart> parts = [];
        for (var i = 0; i < total.Count; i++)
        {
            var (part, fault) = Measured(total[i], measures);
            if (part is null)
            {
                return (null, fault!.Within($"[{i}]"));
            }

            parts.Add(part);
        }

        return (parts, null);
    }

    /// <summary>
    /// The parts brought to a recipe's own mass and moisture, which carry figures its amounts no longer show.
    /// </summary>
    /// <param name="parts">Parts without fault.</param>
    /// <param name="waterLitres">Water poured on. [L]</param>
    /// <param name="massKg">Mass of the whole after watering. [kg]</param>
    /// <param name="moisturePercent">Moisture of the whole after watering. [%]</param>
    /// <returns>The parts, dry matter and water of each in the same proportion; or the fault of a mass that is
    /// less than the water poured on, or not that of a heap at all.</returns>
    public static (IReadOnlyList<ForecastPart>? Parts, InputFault? Fault) Matching(
        IReadOnlyList<ForecastPart> parts, double waterLitres, double massKg, double moisturePercent)
    {
        var (dry, mass) = (parts.Sum(part => part.DryKg), parts.Sum(part => part.MassKg));
        var newDry = massKg * (1 - (moisturePercent / 100));
        var newWater = massKg - newDry - waterLitres;
        if (!(newDry > 0 && newWater >= -Rounding * massKg && massKg <= InputFault.LargestAmount && dry > 0))
        {
            return (null, new InputFault("massKg", "cannot be, with this moisturePercent and waterLitres"));
        }

        var (dryScale, waterScale) = (newDry / dry, mass > dry ? Math.Max(0, newWater) / (mass - dry) : 0);
        return (Math.Abs(dryScale - 1) + Math.Abs(waterScale - 1) < Rounding
            ? parts
            : [.. parts.Select(part => Scaled(part, dryScale, waterScale))], null);
    }

    private static (ForecastPart? Part, InputFault? Fault) Measured(StockItem item, Measures measures)
    {
        if (item.Check(measures) is { } fault)
        {
            return (null, fault);
        }

        MaterialTable.TryFind(item.Material, out var material);
        var density = item.Given.DensityKgPerM3 ?? material?.Figures?.Density.KilogramsPerCubicMetre;
        if (density is null && item.Measure != Measures.Kilogram)
        {
            return (null, new InputFault("densityKgPerM3", "must be given: the table has none"));
        }

        var mass = item.Measure == Measures.Kilogram
            ? item.Amount
            : item.Amount * measures.VolumeOf(item.Measure).CubicMetres * density!.Value;
        var part = new ForecastPart(item.Material, mass, item.Given);
        return part.Check() is { } partFault ? (null, partFault) : (part, null);
    }

    private static ForecastPart Scaled(ForecastPart part, double dryScale, double waterScale)
    {
        var (dry, water) = (part.DryKg * dryScale, (part.MassKg - part.DryKg) * waterScale);
        return dry + water > 0
            ? part with
            {
                MassKg = dry + water,
                Given = part.Given with { MoisturePercent = Math.Min(100, 100 * water / (dry + water)) },
            }
            : part;
    }
}
