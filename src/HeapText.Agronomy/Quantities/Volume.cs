using System.Globalization;

namespace HeapText.Agronomy.Quantities;

/// <summary>A space filled, as piled. [L] Never negative; the default is none.</summary>
public readonly record struct Volume : IComparable<Volume>
{
    internal const double LitresPerCubicMetre = 1000;

    private Volume(double litres) => Litres = litres;

    /// <summary>Nothing.</summary>
    public static Volume Zero => default;

    /// <summary>The volume in litres. [L]</summary>
    public double Litres { get; }

    /// <summary>The volume in cubic metres. [m3]</summary>
    public double CubicMetres => Litres / LitresPerCubicMetre;

    /// <summary>A volume in litres.</summary>
    /// <param name="litres">0 or more. [L]</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public static Volume FromLitres(double litres) => new(Range.Amount(litres, nameof(litres)));

    /// <summary>Two volumes side by side; as piled, without settling into each other.</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.Litres + right.Litres);

    /// <summary>A part of a volume.</summary>
    public static Volume operator *(Volume volume, Fraction part) => new(volume.Litres * part.Value);

    /// <summary>The mass a volume holds at a bulk density. [kg]</summary>
    public static Mass operator *(Volume volume, BulkDensity density) =>
        Mass.FromKilograms(volume.CubicMetres * density.KilogramsPerCubicMetre);

    /// <summary>Whether the left volume is the smaller.</summary>
    public static bool operator <(Volume left, Volume right) => left.Litres < right.Litres;

    /// <summary>Whether the left volume is the larger.</summary>
    public static bool operator >(Volume left, Volume right) => left.Litres > right.Litres;

    /// <summary>Whether the left volume is no larger.</summary>
    public static bool operator <=(Volume left, Volume right) => left.Litres <= right.Litres;

    /// <summary>Whether the left volume is no smaller.</summary>
    public static bool operator >=(Volume left, Volume right) => left.Litres >= right.Litres;

    /// <summary>The value with its unit, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Litres} L");

    /// <inheritdoc/>
    public int CompareTo(Volume other) => Litres.CompareTo(other.Litres);
}
