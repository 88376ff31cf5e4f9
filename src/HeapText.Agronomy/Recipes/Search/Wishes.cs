namespace HeapText.Agronomy.Recipes.Search;

/// <summary>
/// What is wished of a heap once its volume is settled: C/N that stays in 20-40 as materials vary, C/N near 30, few
/// leftovers of what spoils.
/// </summary>
/// <param name="NitrogenKg">Nitrogen of the largest heap, by which the C/N misses are measured. [kg]</param>
/// <param name="SpoilingLitres">All that spoils in the stock; 0 for none. [L]</param>
/// <param name="HighestM">Most height of any heap. [m]</param>
internal sealed record Wishes(double NitrogenKg, double SpoilingLitres, double HighestM)
{
    // Worths against one point of C/N, such that each wish only decides where the ones before it leave a choice: a heap
    // is at most 9 points off the C/N sought.
    private const double Overshoot = 10, SpoilingUsed = 0.5, Half = 0.02, Height = 0.1;

    private const double GoodHeightM = 1.2;

    /// <summary>Worths of a point of C/N that the varying materials overshoot, and of one missed.</summary>
    internal static IReadOnlyList<double> WorthsOfMisses { get; } = [-Overshoot, -1];

    /// <summary>Worth of putting half a measure into each round.</summary>
    internal double WorthOfHalf(Ingredient part, int rounds) =>
        part.Spoils && SpoilingLitres > 0 ? SpoilingUsed * rounds * part.Litres / SpoilingLitres : 0;

    /// <summary>Worth of a heap by all the later wishes.</summary>
    internal double WorthOf(Batch batch)
    {
        var miss = Math.Abs(batch.CarbonNitrogen - HeapLimits.SoughtCarbonNitrogen) - HeapLimits.CarbonNitrogenLeeway;
        var spoiling = batch.Sum((part, halves) => halves * WorthOfHalf(part, batch.Rounds));
        var odd = batch.Halves.Count(halves => halves % 2 != 0);
        return spoiling - Math.Max(0, miss) - (Overshoot * batch.CarbonNitrogenRange.Overshoot) - (Half * odd)
            + WorthOfHeight(batch.Rounds);
    }

    /// <summary>Worth of being able to build high, which keeps heat in.</summary>
    internal double WorthOfHeight(int rounds) =>
        Height * Math.Min(Math.Min(GoodHeightM, HighestM), rounds * HeapLimits.HighestRoundM);
}
