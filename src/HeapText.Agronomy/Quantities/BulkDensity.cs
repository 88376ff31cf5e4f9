using System.Globalization;

namespace HeapText.Agronomy.Quantities;

/// <summary>Mass as it lies in a measure or a heap, per volume. [kg/m3]</summary>
/// <remarks>
/// <code>density = net mass / volume</code>
/// Source: [ZABALETA] in docs/agronomy/sources.md. Checked against: Reference/bulk-density.csv.
/// </remarks>
public readonly record struct BulkDensity : IComparable<BulkDensity>
{
    private BulkDensity(double kilogramsPerCubicMetre) => KilogramsPerCubicMetre = kilogramsPerCubicMetre;

    /// <summary>The density. [kg/m3]</summary>
    public double KilogramsPerCubicMetre { get; }

    /// <summary>A density in kilograms per cubic metre.</summary>
    /// <param name="kilogramsPerCubicMetre">0 or more. [kg/m3]</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public static BulkDensity FromKilogramsPerCubicMetre(double kilogramsPerCubicMetre) =>
        new(Range.Amount(kilogramsPerCubicMetre, nameof(kilogramsPerCubicMetre)));

    /// <summary>Whether the left density is the smaller.</summary>
    public static bool operator <(BulkDensity left, BulkDensity right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left density is the larger.</summary>
    public static bool operator >(BulkDensity left, BulkDensity right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left density is no larger.</summary>
    public static bool operator <=(BulkDensity left, BulkDensity right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left density is no smaller.</summary>
    public static bool operator >=(BulkDensity left, BulkDensity right) => left.CompareTo(right) >= 0;

    /// <summary>The value with its unit, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{KilogramsPerCubicMetre} kg/m3");

    /// <inheritdoc/>
    public int CompareTo(BulkDensity other) => KilogramsPerCubicMetre.CompareTo(other.KilogramsPerCubicMetre);
}
