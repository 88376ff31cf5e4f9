using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace HeapText.Agronomy.Materials;

/// <summary>Every material the product knows, from materials.csv and, for refused ones, refused.csv.</summary>
public static class MaterialTable
{
    private static readonly FrozenDictionary<string, Refusal> Refusals = CsvRows.OfResource("Materials.refused.csv")
        .ToFrozenDictionary(row => row["key"], ReadRefusal, StringComparer.Ordinal);

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

    private static Material Read(IReadOnlyDictionary<string, string> row)
    {
        var role = Enum.Parse<MaterialRole>(row["role"], ignoreCase: true);
        var refused = role == MaterialRole.Refused;
        return new Material(
            row["key"],
            role,
            Enum.Parse<MaterialForm>(row["form"], ignoreCase: true),
            refused ? null : ReadFigures(row))
        {
            Refusal = refused ? Refusals[row["key"]] : null,
        };
    }

    private static Refusal ReadRefusal(IReadOnlyDictionary<string, string> row) =>
        new(row["reason"], row["instead"], row["source"], row["confidence"]);

    private static MaterialFigures ReadFigures(IReadOnlyDictionary<string, string> row) => new()
    {
        CarbonNitrogen = row["cn_typical"].Length == 0 ? null : ReadRange(row, "cn_low", "cn_typical", "cn_high"),
        NitrogenRange = ReadRange(row, "n_low", "nitrogen_percent_dry", "n_high"),
        MoistureRange = ReadRange(row, "moisture_low", "moisture_percent", "moisture_high"),
        DensityRange = ReadRange(row, "density_low", "bulk_density_kg_m3", "density_high"),
        Source = row["source"],
        Confidence = row["confidence"],
    };

    private static FigureRange ReadRange(
        IReadOnlyDictionary<string, string> row, string low, string typical, string high) =>
        new(row.Number(low)!.Value, row.Number(typical)!.Value, row.Number(high)!.Value);
}
