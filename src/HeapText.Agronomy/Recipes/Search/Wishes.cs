namespace HeapText.Agronomy.Recipes.Search;

/// <summary>What is wished of a heap once its volume is settled: C/N near 30, few leftovers of what spoils.</summary>
/// <param name="NitrogenKg">Nitrogen of the largest heap, by which the C/N miss is measured. [kg]</param>
/// <param name="SpoilingLitres">All that spoils in the stock; 0 for none. [L]</param>
internal sealed record Wishes(double NitrogenKg, double SpoilingLitres)
{
    // Worths against one point of C/N, so small that each wish only decides where the ones before it leave a choice.
    private const double SpoilingUsed = 0.5, Half = 0.02, Height = 0.1;

    private const double GoodHeightM = 1.2;

    /// <summary>Worth of putting half a measure into each round.</summary>
    internal double WorthOfHalf(Ingredient part, int rounds) =>
        part.Spoils && SpoilingLitres > 0 ? SpoilingUsed * rounds * part.Litres / SpoilingLitres : 0;

    /// <summary>Worth of a heap by all the later wishes.</summary>
    internal double WorthOf(Batch batch)
    {
        var miss = Math.Abs(batch.CarbonNitrogen - HeapLimits.SoughtCarbonNitrogen) - HeapLimits.CarbonNitrogenLeeway;
        var spoiling = batch.Sum((part, halves) => halves * WorthOfHalf(part, batch.Rounds));
        var odd = batch.Halves.Count(halves => halves % 2 != 0);
        return spoiling - Math.Max(0, miss) - (Half * odd) + WorthOfHeight(batch.Rounds);
    }

    /// <summary>Worth of being able to build high, which keeps heat in.</summary>
    internal static double WorthOfHeight(int rounds) =>
        Height * Math.Min(GoodHeightM, rounds * HeapLimits.HighestRoundM);
}
