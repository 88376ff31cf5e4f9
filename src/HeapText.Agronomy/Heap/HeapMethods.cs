using System.Globalization;

namespace HeapText.Agronomy.Heap;

/// <summary>The methods that come with the product, from methods.csv.</summary>
public static class HeapMethods
{
    /// <summary>Key of the method used where nothing else is chosen.</summary>
    public const string UsualKey = "daily-then-weekly";

    /// <summary>Key of the method for what is too little for a heap.</summary>
    public const string SmallKey = "small-ring";

    /// <summary>All methods by key.</summary>
    public static IReadOnlyDictionary<string, HeapMethod> All { get; } =
        CsvRows.OfResource("Heap.methods.csv").Select(Read).ToDictionary(m => m.Key, StringComparer.Ordinal);

    /// <summary>The method used where nothing else is chosen.</summary>
    public static HeapMethod Usual => All[UsualKey];

    private static HeapMethod Read(IReadOnlyDictionary<string, string> row) => new()
    {
        Key = row["key"],
        Bounds = new HeapBounds(
            Enum.Parse<HeapForm>(row["form"], ignoreCase: true),
            row.Number("narrowest_m")!.Value,
            row.Number("widest_m")!.Value,
            row.Number("longest_m")!.Value,
            row.Number("highest_m")!.Value,
            row.Number("least_litres")!.Value),
        CheckDays = Days(row["check_days"]),
        TurnDays = Days(row["turn_days"]),
        SettleDays = Whole(row["settle_days"]),
        CuringDays = Whole(row["curing_days"]),
        MoreRestDays = Whole(row["more_rest_days"]),
        ReadyLowDays = Whole(row["ready_low_days"]),
        ReadyHighDays = Whole(row["ready_high_days"]),
    };

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static IReadOnlyList<int> Days(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Whole)];
}
