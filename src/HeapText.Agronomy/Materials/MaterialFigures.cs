using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>Published figures of one material as they vary, with where they come from.</summary>
public sealed record MaterialFigures
{
    /// <summary>C/N; null where there is no nitrogen. [kg C / kg N]</summary>
    public required FigureRange? CarbonNitrogen { get; init; }

    /// <summary>Total nitrogen of dry matter. [%]</summary>
    public required FigureRange NitrogenRange { get; init; }

    /// <summary>Water of fresh mass. [%]</summary>
    public required FigureRange MoistureRange { get; init; }

    /// <summary>Fresh mass as piled. [kg/m3]</summary>
    public required FigureRange DensityRange { get; init; }

    /// <summary>Typical carbon of dry matter; 0 where there is no nitrogen. [kg/kg, dry]</summary>
    /// <remarks>
    /// <code>C = N R</code>
    /// N typical nitrogen [kg/kg, dry]; R typical C/N. Carbon that does not rot is left out: that of carbonates in ash,
    /// lime and shells. At most 52 % for anything but charcoal: rows whose published averages imply more are corrected.
    /// <para>Source: [CORNELL] in docs/agronomy/sources.md; corrections in docs/agronomy/materials.md.</para>
    /// </remarks>
    public Fraction Carbon => Fraction.FromPercent(NitrogenRange.Typical * (CarbonNitrogen?.Typical ?? 0));

    /// <summary>Typical total nitrogen of dry matter. [kg/kg, dry]</summary>
    public Fraction Nitrogen => Fraction.FromPercent(NitrogenRange.Typical);

    /// <summary>Typical water of fresh mass. [kg/kg, wet]</summary>
    public Fraction Moisture => Fraction.FromPercent(MoistureRange.Typical);

    /// <summary>Typical fresh mass as piled. [kg/m3]</summary>
    public BulkDensity Density => BulkDensity.FromKilogramsPerCubicMetre(DensityRange.Typical);

    /// <summary>Where the figures come from, part by part, with the page where known.</summary>
    public required string Source { get; init; }

    /// <summary>
    /// How sure the typical figures are, such as <c>B (density D)</c>: a letter for all of them, then those that
    /// differ. A read; B handbook average from memory that matches a table read; C from memory; D weak estimate.
    /// </summary>
    public required string Confidence { get; init; }
}
