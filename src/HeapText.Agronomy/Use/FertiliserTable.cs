using System.Diagnostics.CodeAnalysis;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>The fertilisers compost is compared with, from fertilisers.csv. Each holds nitrogen.</summary>
public static class FertiliserTable
{
    /// <summary>The most a kilogram may cost. [local money/kg] Chosen: beyond it a price per bag was meant.</summary>
    public const double HighestPrice = 1e6;

    /// <summary>All fertilisers, in the order of the file.</summary>
    public static IReadOnlyList<Fertiliser> All { get; } =
    [
        .. CsvRows.OfResource("Use.fertilisers.csv").Select(row => new Fertiliser(
            row["key"],
            Fraction.FromPercent(row.Number("nitrogen_percent")!.Value),
            Fraction.FromPercent(row.Number("p2o5_percent")!.Value),
            Fraction.FromPercent(row.Number("k2o_percent")!.Value),
            row["source"],
            row["confidence"])),
    ];

    /// <summary>Finds a fertiliser by its key.</summary>
    /// <param name="key">Stable key; null finds nothing.</param>
    /// <param name="fertiliser">The fertiliser, when known.</param>
    public static bool TryFind(string? key, [NotNullWhen(true)] out Fertiliser? fertiliser)
    {
        fertiliser = All.FirstOrDefault(one => one.Key == key);
        return fertiliser is not null;
    }

    /// <summary>Whether a price can be meant. [local money/kg]</summary>
    public static bool IsPrice(double perKg) => perKg is > 0 and <= HighestPrice;

    /// <summary>The first fault of some prices, or null.</summary>
    /// <param name="perKg">Price of a kilogram, by the fertiliser's key. [local money/kg]</param>
    public static InputFault? Check(IReadOnlyDictionary<string, double> perKg)
    {
        ArgumentNullException.ThrowIfNull(perKg);
        return perKg.OrderBy(price => price.Key, StringComparer.Ordinal).Select(price =>
                !TryFind(price.Key, out _) ? new InputFault(price.Key, $"is no known fertiliser: use one of {Keys}")
                : IsPrice(price.Value) ? null
                : new InputFault(price.Key, "must be more than 0 and at most 1000000, for one kilogram"))
            .FirstOrDefault(fault => fault is not null);
    }

    /// <summary>The fertiliser whose nitrogen costs least, and a kilogram of that nitrogen; null without prices.
    /// [local money/kg N]</summary>
    internal static (Fertiliser Fertiliser, double PerKgNitrogen)? CheapestNitrogen(
        IReadOnlyDictionary<string, double> perKg)
    {
        var priced = All.Where(one => perKg.ContainsKey(one.Key))
            .Select(one => (Fertiliser: one, PerKgNitrogen: perKg[one.Key] / one.Nitrogen.Value)).ToList();
        return priced.Count == 0 ? null : priced.MinBy(one => one.PerKgNitrogen);
    }

    private static string Keys => string.Join(", ", All.Select(one => one.Key));
}
