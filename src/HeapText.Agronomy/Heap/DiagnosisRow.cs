using System.Globalization;

namespace HeapText.Agronomy.Heap;

/// <summary>One row of diagnosis.csv: when it holds, what it finds and what it asks for.</summary>
/// <param name="Name">Name of the row.</param>
/// <param name="When">The words of each column that the row asks for; an empty column holds always, <c>?</c> where
/// nothing was told.</param>
/// <param name="Findings">What it finds, most likely first.</param>
/// <param name="Actions">Keys of what it asks for, first things first; at most two.</param>
/// <param name="Then">Keys of what it asks for when the first was done lately without effect; empty for the
/// same.</param>
/// <param name="NextCheckDays">Days to the next check. [d, 1 to 30]</param>
/// <param name="Source">Source keys of docs/agronomy/sources.md, or "common practice, no source", or "chosen".</param>
public sealed record DiagnosisRow(
    string Name,
    IReadOnlyDictionary<string, string> When,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<string> Actions,
    IReadOnlyList<string> Then,
    int NextCheckDays,
    string Source)
{
    /// <summary>The columns of what a row asks for, in the order of the file.</summary>
    public static IReadOnlyList<string> Columns { get; } =
        ["heat", "smell", "moisture", "pests", "phase", "form", "rod"];

    // Bit 0 stands for not told, bit n + 1 for the value n of the column's type.
    private readonly int[] _wanted =
    [
        Bits<Heat>(When["heat"]), Bits<Smell>(When["smell"]), Bits<Moisture>(When["moisture"]),
        Bits<Pests>(When["pests"]), Bits<HeapPhase>(When["phase"]), Bits<HeapForm>(When["form"]),
        Bits<RodKind>(When["rod"]),
    ];

    /// <summary>True for a row about animals, false for one about the heap itself.</summary>
    public bool IsOfPests => When["pests"].Length > 0;

    /// <summary>True when it finds a fault first.</summary>
    internal bool IsComplaint => Findings is [{ Cause: not HeapCauses.WorkingWell }, ..];

    internal bool Holds(DiagnosisInput input) =>
        Has(0, (int?)input.Heat) && Has(1, (int?)input.Smell) && Has(2, (int?)input.Moisture)
        && Has(3, (int?)input.Pests) && Has(4, (int?)input.Phase) && Has(5, (int)input.Form)
        && Has(6, (int?)input.Rod);

    internal static DiagnosisRow Read(IReadOnlyDictionary<string, string> row) => new(
        row["row"],
        Columns.ToDictionary(column => column, column => row[column], StringComparer.Ordinal),
        [.. Words(row["causes"]).Select(ReadFinding)],
        Words(row["actions"]),
        Words(row["then"]),
        int.Parse(row["next_days"], CultureInfo.InvariantCulture),
        row["source"]);

    private bool Has(int column, int? value) => (_wanted[column] & (1 << ((value ?? -1) + 1))) != 0;

    private static int Bits<T>(string cell)
        where T : struct, Enum
    {
        const int all = -1;
        return cell.Length == 0
            ? all
            : Words(cell).Aggregate(0, (bits, word) => bits | (word == "?" ? 1 : 1 << (ValueOf<T>(word) + 1)));
    }

    private static int ValueOf<T>(string word)
        where T : struct, Enum => Convert.ToInt32(
            Enum.Parse<T>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true),
            CultureInfo.InvariantCulture);

    private static Finding ReadFinding(string word)
    {
        var parts = word.Split(':');
        return new Finding(parts[0], Enum.Parse<Confidence>(parts[1], ignoreCase: true));
    }

    private static string[] Words(string cell) => cell.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
