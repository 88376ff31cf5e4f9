using System.Diagnostics;
using System.Text.Json;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Tests.Replies;

namespace HeapText.Benchmarks.Reading;

/// <summary>How the time of reading a text spreads over the lines that the reader was tuned on.</summary>
internal static class ReadingSpread
{
    private const int Repeats = 5;

    internal static void Run(TextWriter output)
    {
        var start = Stopwatch.GetTimestamp();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var reader = new Reader(Lexicon.Load("dialogs").Lexicons);
        var loaded = Stopwatch.GetElapsedTime(start);
        var held = GC.GetTotalMemory(forceFullCollection: true) - before;
        output.WriteLine($"words of all languages: loaded in {loaded.TotalSeconds:0.00} s, {held / 1e6:0} MB");
        output.WriteLine("| texts | number | letters | median µs | 9 of 10 below | most | / plain look-up |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        List<(string Language, string Text)> lines = [.. Lines()];
        List<(string Kind, List<(string Language, string Text)> Texts)> kinds =
        [
            .. lines.GroupBy(line => line.Language).Select(lines => (lines.Key, lines.ToList())),
            ("random bytes",
                [.. Spoilt.RandomTexts(10_000).Select((text, i) => (lines[i % lines.Count].Language, text))]),
            ("spoilt lines", [.. Spoilt.Lines(lines, 100_000)]),
        ];
        foreach (var (language, text) in kinds.SelectMany(kind => kind.Texts)) reader.Read(text, language);
        foreach (var (kind, texts) in kinds)
        {
            var plain = Times(texts, (text, _) => PlainLookUp(text));
            var times = Times(texts, (text, language) => reader.Read(text, language).Materials.Count);
            var letters = texts.Average(text => text.Text.Length);
            output.WriteLine($"| {kind} | {times.Count} | {letters:0} | {Middle(times):0.0} | "
                + $"{times[times.Count * 9 / 10]:0.0} | {times[^1]:0.0} | {Middle(times) / Middle(plain):0.0} |");
        }
    }

    private static double Middle(List<double> times) => times[times.Count / 2];

    private static IEnumerable<(string Language, string Text)> Lines() =>
        from file in Directory.EnumerateFiles("tests/HeapText.Dialog.Tests/Replies/Corpus", "*-tuning*.jsonl")
        from line in File.ReadLines(file)
        let example = JsonDocument.Parse(line).RootElement
        let language = example.GetProperty("lang").GetString()!
        orderby language
        select (language, example.GetProperty("text").GetString()!);

    /// <summary>The least that any reader does: cut at spaces and look every word up once.</summary>
    private static int PlainLookUp(string text) =>
        text.ToLowerInvariant().Split(' ').Count(Plain.Contains);

    private static readonly HashSet<string> Plain =
        [.. Lines().SelectMany(text => text.Text.ToLowerInvariant().Split(' '))];

    /// <summary>The least of a few tries of each text, so that what else the machine does stays out. [µs]</summary>
    private static List<double> Times(
        IEnumerable<(string Language, string Text)> texts, Func<string, string, int> read) =>
        [.. texts.Select(text => Enumerable.Range(0, Repeats).Min(_ =>
        {
            var start = Stopwatch.GetTimestamp();
            read(text.Text, text.Language);
            return Stopwatch.GetElapsedTime(start).TotalMicroseconds;
        })).Order()];
}
