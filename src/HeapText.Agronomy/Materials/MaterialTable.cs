using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>Every material the product knows, from materials.csv.</summary>
public static class MaterialTable
{
    private static readonly FrozenDictionary<string, Material> ByKey = CsvRows.OfResource("Materials.materials.csv")
        .Select(Read).ToFrozenDictionary(material => material.Key, StringComparer.Ordinal);

    /// <summary>All materials, by key in ordinal order.</summary>
    public static IReadOnlyList<Material> All { get; } =
        [.. ByKey.Values.OrderBy(material => material.Key, StringComparer.Ordinal)];

    /// <summary>Finds a material by its key.</summary>
    /// <param name="key">Stable key; null finds nothing.</param>
    /// <param name="material">The material, when known.</param>
    /// <returns>Whether the key is known, refused materials included.</returns>
    public static bool TryFind(string? key, [NotNullWhen(true)] out Material? material)
    {
        material = null;
        return key is not null && ByKey.TryGetValue(key, out material);
    }

    private static Material Read(IReadOnlyDictionary<string, string> row) => new(
        row["key"],
        Enum.Parse<MaterialRole>(row["role"], ignoreCase: true),
        Enum.Parse<MaterialForm>(row["form"], ignoreCase: true),
        ReadFigures(row));

    private static MaterialFigures? ReadFigures(IReadOnlyDictionary<string, string> row)
    {
        if (row.Number("nitrogen_percent_dry") is not { } nitrogen)
        {
            return null;
        }

        var typical = row.Number("cn_typical");
        return new MaterialFigures
        {
            Carbon = Fraction.FromPercent(nitrogen * (typical ?? 0)),
            Nitrogen = Fraction.FromPercent(nitrogen),
            Moisture = Fraction.FromPercent(row.Number("moisture_percent")!.Value),
            Density = BulkDensity.FromKilogramsPerCubicMetre(row.Number("bulk_density_kg_m3")!.Value),
            CarbonNitrogen = typical is { } middle
                ? new CarbonNitrogenRange(row.Number("cn_low")!.Value, middle, row.Number("cn_high")!.Value)
                : null,
            Source = row["source"],
            Confidence = row["confidence"],
        };
    }
}
