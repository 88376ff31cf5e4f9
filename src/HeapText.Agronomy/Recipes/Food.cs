using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;

namespace HeapText.Agronomy.Recipes;

/// <summary>What microbes can eat. [kg]</summary>
internal readonly record struct Food(double Carbon, double Nitrogen);

/// <summary>
/// The same material at the ends of its C/N range, read either way: its carbon varies, or its nitrogen.
/// </summary>
/// <remarks>
/// <code>C r/R, N   or   C, N R/r   for r = low, high</code>
/// C, N carbon and nitrogen [kg]; R typical C/N; r an end of its range. What was measured on the spot does not vary:
/// with one of carbon and nitrogen given the other varies, with the ratio given nothing does.
/// <para>Source: ranges of materials.csv; the readings are derived.</para>
/// </remarks>
internal readonly record struct VariedFood(Food LowByCarbon, Food LowByNitrogen, Food HighByCarbon, Food HighByNitrogen)
{
    internal static VariedFood Of(Food typical, Material material, GivenFigures given)
    {
        var isRatioGiven = given is { CarbonNitrogen: not null }
            or { CarbonPercent: not null, NitrogenPercent: not null };
        if (isRatioGiven || material.Figures?.CarbonNitrogen is not { } range)
        {
            return new VariedFood(typical, typical, typical, typical);
        }

        var (low, high) = (range.Low / range.Typical, range.High / range.Typical);
        return new VariedFood(ByCarbon(low), ByNitrogen(low), ByCarbon(high), ByNitrogen(high));

        Food ByCarbon(double part) => given.CarbonPercent is null ? WithCarbon(part) : WithNitrogen(part);

        Food ByNitrogen(double part) => given.NitrogenPercent is null ? WithNitrogen(part) : WithCarbon(part);

        Food WithCarbon(double part) => typical with { Carbon = typical.Carbon * part };

        Food WithNitrogen(double part) => typical with { Nitrogen = typical.Nitrogen / part };
    }
}
