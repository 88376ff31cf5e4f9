using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>What a district's office weighed and measured itself; each figure takes the place of the table's.</summary>
/// <remarks>
/// A material is weighed in the measure <c>bucket</c>: the 20-litre one, unless <see cref="MeasureLitres"/> gives
/// <c>bucket</c> another volume; then it is that bucket which was weighed. Figures a household gives go before these.
/// </remarks>
public sealed record DistrictFigures
{
    private const double LeastBucketKg = 0.2;
    private const double MostBucketKg = 40;
    private const double MostMoisture = 98;

    /// <summary>Nothing measured: the tables hold.</summary>
    public static DistrictFigures None { get; } = new();

    /// <summary>Contents of one full bucket, without the bucket, by material. [kg, 0.2 to 40]</summary>
    public IReadOnlyDictionary<string, double> BucketKg { get; init; } = new Dictionary<string, double>();

    /// <summary>Water of fresh mass this season, by material. [%, 0 to 98]</summary>
    public IReadOnlyDictionary<string, double> MoisturePercent { get; init; } = new Dictionary<string, double>();

    /// <summary>What one measure holds here, by measure. [L, 0.01 to 10000]</summary>
    public IReadOnlyDictionary<string, double> MeasureLitres { get; init; } = new Dictionary<string, double>();

    /// <summary>The default measures with this district's own.</summary>
    /// <exception cref="ArgumentException">A measure that <see cref="Check"/> finds fault with.</exception>
    public Measures LocalMeasures() => Measures.Default.With(MeasureLitres);

    /// <summary>This district's figures of one material.</summary>
    /// <param name="key">Stable key of a material.</param>
    /// <remarks>
    /// <code>density = 1000 Q / v</code>
    /// Q contents of a full bucket [kg]; v what the bucket holds [L]; density [kg/m3].
    /// <para>Source: [ZABALETA] in docs/agronomy/sources.md. Checked against: Reference/bulk-density.csv.</para>
    /// </remarks>
    /// <returns>What was measured; <see cref="GivenFigures.None"/> when nothing was.</returns>
    public GivenFigures For(string key)
    {
        double? moisture = MoisturePercent.TryGetValue(key, out var percent) ? percent : null;
        double? density = BucketKg.TryGetValue(key, out var kilograms) ? Density(kilograms) : null;
        return moisture is null && density is null
            ? GivenFigures.None
            : new GivenFigures { MoisturePercent = moisture, DensityKgPerM3 = density };
    }

    /// <summary>Every fault, with the fix.</summary>
    /// <returns>
    /// Fields are paths such as <c>Materials:rice-straw:BucketKg</c> and <c>Measures:bucket</c>, as in settings;
    /// empty when all is well.
    /// </returns>
    public IReadOnlyList<InputFault> Check()
    {
        var measures = MeasureLitres.Select(own => CheckMeasure(own.Key, own.Value));
        var weights = BucketKg.Select(own => CheckMaterial(own.Key) ?? CheckBucket(own.Key, own.Value));
        var moistures = MoisturePercent.Select(own => CheckMaterial(own.Key) ?? CheckMoisture(own.Key, own.Value));
        return
        [
            .. measures.Concat(weights).Concat(moistures).OfType<InputFault>().Distinct()
                .OrderBy(fault => fault.Field, StringComparer.Ordinal),
        ];
    }

    private static InputFault? CheckMeasure(string key, double litres) =>
        Measures.Default.CheckOne(key, litres) is { } fault
            ? new InputFault($"Measures:{key}", $"{fault.Reason}: give the litres of one bucket, wheelbarrow or such")
            : null;

    private static InputFault? CheckMaterial(string key) =>
        !MaterialTable.TryFind(key, out var material)
            ? new InputFault(Path(key), "is no material: use a key of the materials table, such as rice-straw")
            : material.IsRefused ? new InputFault(Path(key), "never goes into a heap: take it out")
            : null;

    private static InputFault? CheckMoisture(string key, double percent) => percent is >= 0 and <= MostMoisture
        ? null
        : new InputFault(Path(key, nameof(MoisturePercent)), "must be from 0 to 98: give per cent of the fresh mass");

    private static string Path(string key) => $"Materials:{key}";

    private static string Path(string key, string figure) => $"{Path(key)}:{figure}";

    private InputFault? CheckBucket(string key, double kilograms) =>
        kilograms is not (>= LeastBucketKg and <= MostBucketKg)
            ? new InputFault(Path(key, nameof(BucketKg)),
                "must be from 0.2 to 40: give the kilograms in one full bucket, without the bucket")
            : HasBucket && new GivenFigures { DensityKgPerM3 = Density(kilograms) }.Check() is not null
                ? new InputFault(Path(key, nameof(BucketKg)),
                    "does not go with the litres of Measures:bucket: weigh again, or measure the bucket again")
                : null;

    // A bucket that is faulty itself is told of once, not with each material weighed in it.
    private bool HasBucket =>
        !MeasureLitres.TryGetValue(Measures.Bucket, out var litres)
        || Measures.Default.CheckOne(Measures.Bucket, litres) is null;

    private double Density(double kilograms)
    {
        var litres = MeasureLitres.TryGetValue(Measures.Bucket, out var own)
            ? own
            : Measures.Default.VolumeOf(Measures.Bucket).Litres;
        return kilograms / Volume.FromLitres(litres).CubicMetres;
    }
}
