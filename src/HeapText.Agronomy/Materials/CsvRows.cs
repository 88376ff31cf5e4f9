using System.Globalization;
using System.Reflection;
using System.Text;

namespace HeapText.Agronomy.Materials;

/// <summary>Reads an embedded data file in RFC 4180 form, one dictionary a row by the names in its first row.</summary>
internal static class CsvRows
{
    internal static IEnumerable<IReadOnlyDictionary<string, string>> OfResource(
        string name, string folder = "Materials")
    {
        var resource = $"HeapText.Agronomy.{folder}.{name}";
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The data file {resource} is not embedded.");
        using var reader = new StreamReader(stream);
        var heads = Split(reader.ReadLine() ?? "");
        while (reader.ReadLine() is { } line)
        {
            yield return heads.Zip(Split(line)).ToDictionary(cell => cell.First, cell => cell.Second);
        }
    }

    internal static double? Number(this IReadOnlyDictionary<string, string> row, string column) =>
        row[column].Length == 0 ? null : double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (quoted && line[i] == '"' && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append(line[i++]);
            }
            else if (line[i] == '"')
            {
                quoted = !quoted;
            }
            else if (line[i] == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(line[i]);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
