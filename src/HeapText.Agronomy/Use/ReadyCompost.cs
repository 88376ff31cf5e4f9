using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>What ready compost is taken to be where nobody has measured it.</summary>
/// <remarks>
/// Sources, keyed in docs/agronomy/sources.md. Nitrogen: 0.8-1.0 % of dry matter, never 2 %, from [INDORE] 0.8 %,
/// [TIGRAY] 0.3-1.0 % and [INDIA] 0.5 %, read; the middle chosen. Moisture: chosen, as old compost in materials.csv.
/// Density: 0.6 kg/L, a 20-litre bucket 10-13 kg, derived from materials.csv.
/// </remarks>
public static class ReadyCompost
{
    /// <summary>How heavily it lies. [kg/L]</summary>
    public const double KgPerLitre = 0.6;

    /// <summary>Nitrogen of any compost that a figure given by hand may claim at most. [% of dry matter] Chosen:
    /// good compost holds 1.2-2.0, from memory.</summary>
    public const double MostNitrogenPercent = 3;

    /// <summary>Water of fresh mass. [kg/kg, wet]</summary>
    public static Fraction Moisture { get; } = Fraction.FromPercent(40);

    /// <summary>Nitrogen of dry matter. [kg/kg, dry]</summary>
    public static Fraction Nitrogen { get; } = Fraction.FromPercent(0.9);
}
