using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>Every crop with a compost rate, from crops.csv.</summary>
public static class CropTable
{
    /// <summary>All crops, in the order of the file.</summary>
    public static IReadOnlyList<Crop> All { get; } = [.. CsvRows.OfResource("Use.crops.csv").Select(Read)];

    internal static string Keys => string.Join(", ", All.Select(crop => crop.Key));

    /// <summary>Finds a crop by its key.</summary>
    /// <param name="key">Stable key; null finds nothing.</param>
    /// <param name="crop">The crop, when known.</param>
    public static bool TryFind(string? key, [NotNullWhen(true)] out Crop? crop)
    {
        crop = All.FirstOrDefault(one => one.Key == key);
        return crop is not null;
    }

    private static Crop Read(IReadOnlyDictionary<string, string> row)
    {
        var basis = Enum.Parse<RateBasis>(row["basis"], ignoreCase: true);
        var plantsPerM2 = row.Number("plants_per_m2")!.Value;
        var given = new CompostRate(
            row.Number("low")!.Value, row.Number("typical")!.Value, row.Number("high")!.Value);
        var perPlant = basis switch
        {
            RateBasis.Area => given.Times(1 / plantsPerM2),
            RateBasis.Mix => given.Times(row.Number("pot_litres")!.Value * ReadyCompost.KgPerLitre),
            _ => given,
        };
        return new Crop
        {
            Key = row["key"],
            Basis = basis,
            PerM2 = basis == RateBasis.Area ? given : perPlant.Times(plantsPerM2),
            PerPlant = perPlant,
            MixShare = basis == RateBasis.Mix ? Fraction.FromValue(given.Typical) : null,
            PlantsPerM2 = plantsPerM2,
            Contact = Enum.Parse<FoodContact>(row["contact"], ignoreCase: true),
            BeforePlanting = row["before_planting"] == "yes",
            EveryYears = row["every_years"] is { Length: > 0 } years
                ? int.Parse(years, CultureInfo.InvariantCulture)
                : null,
            Source = row["source"],
            Confidence = row["confidence"],
        };
    }
}
