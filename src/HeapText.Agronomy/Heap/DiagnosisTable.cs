namespace HeapText.Agronomy.Heap;

/// <summary>The table of diagnosis.csv: first the row of the heap itself that holds, then the one of the animals seen,
/// each the first in the order of the file.</summary>
public static class DiagnosisTable
{
    /// <summary>All rows, in order.</summary>
    public static IReadOnlyList<DiagnosisRow> Rows { get; } =
        [.. CsvRows.OfResource("Heap.diagnosis.csv").Select(DiagnosisRow.Read)];

    private static readonly DiagnosisRow[] OfHeap = [.. Rows.Where(row => !row.IsOfPests)];
    private static readonly DiagnosisRow[] OfPests = [.. Rows.Where(row => row.IsOfPests)];

    /// <summary>The row of the heap itself: there always is one.</summary>
    public static DiagnosisRow HeapRow(DiagnosisInput input) => OfHeap.First(row => row.Holds(input));

    /// <summary>The row of the animals seen; null when none were.</summary>
    public static DiagnosisRow? PestsRow(DiagnosisInput input) => OfPests.FirstOrDefault(row => row.Holds(input));
}
