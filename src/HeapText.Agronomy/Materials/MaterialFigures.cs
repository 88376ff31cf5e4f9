using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>Published figures of one material, with where they come from.</summary>
public sealed record MaterialFigures
{
    /// <summary>
    /// Carbon of dry matter. [kg/kg, dry] Derived: nitrogen × typical C/N; 0 where there is no nitrogen.
    /// </summary>
    public required Fraction Carbon { get; init; }

    /// <summary>Total nitrogen of dry matter. [kg/kg, dry]</summary>
    public required Fraction Nitrogen { get; init; }

    /// <summary>Water of fresh mass. [kg/kg, wet]</summary>
    public required Fraction Moisture { get; init; }

    /// <summary>Fresh mass as piled. [kg/m3]</summary>
    public required BulkDensity Density { get; init; }

    /// <summary>C/N as published; null for minerals. [kg C / kg N]</summary>
    public required CarbonNitrogenRange? CarbonNitrogen { get; init; }

    /// <summary>Where the figures come from, part by part.</summary>
    public required string Source { get; init; }

    /// <summary>
    /// A read; B handbook average from memory that matches a table read; C from memory; D weak estimate.
    /// </summary>
    public required string Confidence { get; init; }
}

/// <summary>C/N as it varies. [kg C / kg N]</summary>
/// <param name="Low">Low end of the published range.</param>
/// <param name="Typical">The figure used.</param>
/// <param name="High">High end of the published range.</param>
public sealed record CarbonNitrogenRange(double Low, double Typical, double High);
