using System.Globalization;

namespace HeapText.Agronomy.Quantities;

/// <summary>An amount of matter. [kg] Never negative; the default is none.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    private Mass(double kilograms) => Kilograms = kilograms;

    /// <summary>Nothing.</summary>
    public static Mass Zero => default;

    /// <summary>The amount in kilograms. [kg]</summary>
    public double Kilograms { get; }

    /// <summary>An amount in kilograms.</summary>
    /// <param name="kilograms">0 or more. [kg]</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public static Mass FromKilograms(double kilograms) => new(Range.Amount(kilograms, nameof(kilograms)));

    /// <summary>Two masses together.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Kilograms + right.Kilograms);

    /// <summary>What is left of a mass once another is taken away.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is taken than there is.</exception>
    public static Mass operator -(Mass left, Mass right) => FromKilograms(left.Kilograms - right.Kilograms);

    /// <summary>A part of a mass.</summary>
    public static Mass operator *(Mass mass, Fraction part) => new(mass.Kilograms * part.Value);

    /// <summary>How heavily a mass lies in a volume. [kg/m3]</summary>
    /// <exception cref="ArgumentOutOfRangeException">The volume is zero.</exception>
    public static BulkDensity operator /(Mass mass, Volume volume) =>
        BulkDensity.FromKilogramsPerCubicMetre(mass.Kilograms / volume.CubicMetres);

    /// <summary>The volume a mass fills at a bulk density. [L]</summary>
    public static Volume operator /(Mass mass, BulkDensity density) =>
        Volume.FromLitres(mass.Kilograms / density.KilogramsPerCubicMetre * Volume.LitresPerCubicMetre);

    /// <summary>Whether the left mass is the smaller.</summary>
    public static bool operator <(Mass left, Mass right) => left.Kilograms < right.Kilograms;

    /// <summary>Whether the left mass is the larger.</summary>
    public static bool operator >(Mass left, Mass right) => left.Kilograms > right.Kilograms;

    /// <summary>Whether the left mass is no larger.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Kilograms <= right.Kilograms;

    /// <summary>Whether the left mass is no smaller.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Kilograms >= right.Kilograms;

    /// <summary>The value with its unit, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kilograms} kg");

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Kilograms.CompareTo(other.Kilograms);
}
