using System.Text.RegularExpressions;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>Keys of sources, as data files cite them and docs/agronomy/sources.md lists them.</summary>
internal static partial class SourceKeys
{
    internal static IReadOnlySet<string> Known { get; } = File
        .ReadLines(Repository.Path("docs", "agronomy", "sources.md"))
        .Select(line => Row().Match(line)).Where(match => match.Success).Select(match => match.Groups[1].Value)
        .ToHashSet(StringComparer.Ordinal);

    internal static IReadOnlyList<string> In(string text) =>
        [.. Cited().Matches(text).Select(match => match.Groups[1].Value)];

    [GeneratedRegex(@"^\| ([A-Z0-9]+) \|")]
    private static partial Regex Row();

    [GeneratedRegex(@"\[([A-Z0-9]+)\]")]
    private static partial Regex Cited();
}
