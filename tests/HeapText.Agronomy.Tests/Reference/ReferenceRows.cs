using System.Globalization;

namespace HeapText.Agronomy.Tests.Reference;

/// <summary>Rows of a reference file beside the tests; cells may be quoted.</summary>
internal static class ReferenceRows
{
    internal static IEnumerable<string[]> Of(string name) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", name)).Skip(1).Select(Split);

    internal static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static string[] Split(string line)
    {
        // Commas inside quotes are of no interest to a test: only notes are quoted.
        var pieces = line.Split('"').Select((piece, i) => i % 2 == 0 ? piece : piece.Replace(',', ';'));
        return string.Concat(pieces).Split(',');
    }
}
