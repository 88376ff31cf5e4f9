using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>How much each local measure holds: the stated defaults, or a district's own figures.</summary>
public sealed class Measures
{
    /// <summary>The measure that counts mass, not volume.</summary>
    public const string Kilogram = "kg";

    /// <summary>The measure a district weighs its materials in.</summary>
    public const string Bucket = "bucket";

    /// <summary>The measure that is one litre, whatever the district.</summary>
    public const string Litre = "litre";

    private const double LeastLitres = 0.01;
    private const double MostLitres = 10_000;

    private readonly Dictionary<string, Measure> _byKey;

    private Measures(IEnumerable<Measure> measures) =>
        _byKey = measures.ToDictionary(measure => measure.Key, StringComparer.Ordinal);

    /// <summary>The defaults of measures.csv.</summary>
    public static Measures Default { get; } = new(CsvRows.OfResource("Materials.measures.csv")
        .Select(row => new Measure(
            row["key"], Volume.FromLitres(row.Number("litres")!.Value), row["source"], row["confidence"])));

    /// <summary>All measures of volume, by key in ordinal order.</summary>
    public IReadOnlyList<Measure> All => [.. _byKey.Values.OrderBy(measure => measure.Key, StringComparer.Ordinal)];

    /// <summary>Whether a stock may be counted in this measure, kilograms included.</summary>
    public bool IsKnown(string? key) => key is not null && (key == Kilogram || _byKey.ContainsKey(key));

    /// <summary>What one of a measure holds. [L]</summary>
    /// <exception cref="KeyNotFoundException">
    /// Unknown measure, or kilograms, which have no volume of their own.
    /// </exception>
    public Volume VolumeOf(string key) => _byKey[key].Volume;

    /// <summary>These measures with some replaced by a district's own figures.</summary>
    /// <param name="litres">Litres of one measure, by key. [L]</param>
    /// <exception cref="ArgumentException">A figure that <see cref="Check"/> finds fault with.</exception>
    public Measures With(IReadOnlyDictionary<string, double> litres)
    {
        if (Check(litres) is { } fault)
        {
            throw new ArgumentException(fault.ToString(), nameof(litres));
        }

        return new Measures(_byKey.Values.Select(measure => litres.TryGetValue(measure.Key, out var own)
            ? measure with { Volume = Volume.FromLitres(own), Source = "given", Confidence = "A" }
            : measure));
    }

    /// <summary>The first fault of a district's figures, or null.</summary>
    public InputFault? Check(IReadOnlyDictionary<string, double> litres) => litres
        .OrderBy(own => own.Key, StringComparer.Ordinal)
        .Select(own => CheckOne(own.Key, own.Value))
        .FirstOrDefault(fault => fault is not null);

    internal InputFault? CheckOne(string key, double litres) =>
        !_byKey.ContainsKey(key) || key == Litre ? new InputFault(key, "is no measure that can be set")
        : litres is >= LeastLitres and <= MostLitres ? null
        : new InputFault(key, "must be from 0.01 to 10000 litres");
}
