using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Forecasting;

/// <summary>How well a check fits a heap: the chance that a farmer says this word of it.</summary>
/// <remarks>
/// <code>P(word | x) = √(Φ((upper − x) / s) − Φ((lower − x) / s))</code>
/// x core temperature [C] or moisture [%]; lower, upper bounds of the word; s how widely feeling varies; Φ logistic,
/// whose long tails forgive a slip. The square root is there because the same hand feels the same heap: two checks are
/// not two witnesses. Words so ordered never let a hotter one favour a cooler heap.
/// <para>Source: bounds derived from pain on contact [DEFRIN] and contact temperatures of metal and wood; suggested,
/// not published. Widths: wood and hand about 10 C; metal 5 C, chosen.</para>
/// </remarks>
internal static class CheckLikelihood
{
    private const double MetalWidth = 5, WoodWidth = 10, MoistureWidth = 5;

    // Cold to cool, and cool to warm, above the air; no rod tells less. [K]
    private const double ColdAbove = 3, CoolAbove = 8;
    private const double MetalHotC = 52, UnknownHotC = 52, WoodHotC = 56, WarmC = 36;

    private static readonly double[] MoistureBounds = [45, 60, 67];

    internal static double Of(FieldCheck check, double coreC, double moisturePercent, double ambientC)
    {
        var likelihood = 1.0;
        if (check.Heat is { } heat)
        {
            var width = check.Rod == RodKind.Metal ? MetalWidth : WoodWidth;
            var hot = check.Rod switch { RodKind.Metal => MetalHotC, RodKind.Wood => WoodHotC, _ => UnknownHotC };
            var warm = Math.Max(WarmC, ambientC + CoolAbove);
            double[] bounds = [Math.Min(ambientC + ColdAbove, warm - 1), warm, Math.Max(hot, warm + 1)];
            likelihood *= OfWord(Heat.Cold - heat, bounds, coreC, width);
        }

        if (check.Moisture is { } moisture)
        {
            likelihood *= OfWord(Moisture.Dry - moisture, MoistureBounds, moisturePercent, MoistureWidth);
        }

        return Math.Sqrt(likelihood);
    }

    private static double OfWord(int word, double[] bounds, double value, double width)
    {
        var upper = word == bounds.Length ? double.PositiveInfinity : (bounds[word] - value) / width;
        var lower = word == 0 ? double.NegativeInfinity : (bounds[word - 1] - value) / width;
        // Taken from the nearer tail, where the difference of two numbers near 1 would be lost.
        return lower > 0 ? Logistic(-lower) - Logistic(-upper) : Logistic(upper) - Logistic(lower);
    }

    private static double Logistic(double x)
    {
        const double normalScale = 1.702;
        return 1 / (1 + Math.Exp(-normalScale * x));
    }
}
