using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>Ready compost in a measure a farmer has, rounded to what can be carried in the head.</summary>
/// <param name="Amount">How many; whole or half. [measures]</param>
/// <param name="Measure">Stable key: bucket or handful.</param>
/// <remarks>Mass becomes volume at <see cref="ReadyCompost.KgPerLitre"/>: a 20-litre bucket is 12 kg.</remarks>
public readonly record struct CompostAmount(double Amount, string Measure)
{
    private const string Bucket = "bucket";
    private const string Handful = "handful";

    /// <summary>Up to this many, halves are told. Chosen.</summary>
    private const double MostInHalves = 10;

    /// <summary>Up to this many, ones are told, then tens. Chosen.</summary>
    private const double MostInOnes = 100;

    /// <summary>From half a bucket on, buckets are told; below that handfuls, down to half of one. Chosen.</summary>
    private const double Half = 0.5;

    /// <summary>Compost in buckets: the nearest half up to 10, one up to 100, ten beyond; 0 below a quarter.</summary>
    /// <param name="mass">Compost as it lies. [kg]</param>
    /// <param name="measures">What a bucket holds here; null for the default.</param>
    public static double Buckets(Mass mass, Measures? measures = null) => Round(In(Bucket, mass, measures));

    /// <summary>Compost in handfuls of two hands while it is less than half a bucket, else in buckets.</summary>
    /// <param name="mass">Compost, of one plant or all, as it lies. [kg]</param>
    /// <param name="measures">What the measures hold here; null for the default.</param>
    /// <returns>Null when it is less than a quarter of a handful: tell it by the ground instead.</returns>
    public static CompostAmount? Of(Mass mass, Measures? measures = null)
    {
        if (In(Bucket, mass, measures) >= Half) return new(Buckets(mass, measures), Bucket);
        var handfuls = Round(In(Handful, mass, measures));
        return handfuls >= Half ? new(handfuls, Handful) : null;
    }

    /// <summary>Ground that one bucket covers, in whole square metres, at least 1. [m2]</summary>
    /// <param name="kgPerM2">Rate, above 0. [kg/m2]</param>
    /// <param name="measures">What a bucket holds here; null for the default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate of 0 or less.</exception>
    public static double SquareMetresOfOneBucket(double kgPerM2, Measures? measures = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(kgPerM2);
        return Math.Max(1, Math.Round(KgOf(Bucket, measures) / kgPerM2));
    }

    /// <summary>The mass of this amount. [kg]</summary>
    /// <param name="measures">What the measures hold here; null for the default.</param>
    public Mass ToMass(Measures? measures = null) => Mass.FromKilograms(Amount * KgOf(Measure, measures));

    private static double In(string measure, Mass mass, Measures? measures) =>
        mass.Kilograms / KgOf(measure, measures);

    private static double KgOf(string measure, Measures? measures) =>
        (measures ?? Measures.Default).VolumeOf(measure).Litres * ReadyCompost.KgPerLitre;

    private static double Round(double count) => count switch
    {
        <= MostInHalves => Math.Round(count * 2) / 2,
        <= MostInOnes => Math.Round(count),
        _ => Math.Round(count / 10) * 10,
    };
}
