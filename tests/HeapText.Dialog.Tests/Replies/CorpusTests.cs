using System.Text.Json;
using System.Text.Json.Nodes;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Texts as farmers may write them, each with the reading it should have.</summary>
public sealed class CorpusTests(ITestOutputHelper output)
{
    private const double LeastTuned = 0.93;

    /// <summary>Where the scores are left for the run of all tests to print.</summary>
    private static readonly string Scores = Repository.Path("artifacts", "reading-scores");

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Replies", "Corpus");

    /// <summary>What the reader was tuned on, line by line.</summary>
    public static TheoryData<string> Tuned() =>
        [.. Files("examples", "tuning", "tuning2", "tuning3", "tuning4", "tuning5", "tuning6", "scoring")];

    [Theory]
    [MemberData(nameof(Tuned))]
    public void Read_LineItWasTunedOn_IsExact(string half)
    {
        var (cases, misses) = Score(half);

        misses.ForEach(output.WriteLine);
        Assert.True(misses.Count <= cases * (1 - LeastTuned), $"{half}: {string.Join("\n", misses)}");
    }

    /// <summary>Lines that nobody looks at while tuning: only their number is told, never which were missed.</summary>
    [Theory]
    [InlineData("en", 0.941)]
    [InlineData("sw", 0.949)]
    [InlineData("fr", 0.944)]
    [InlineData("pt", 0.966)]
    [InlineData("am", 0.977)]
    public void Read_LinesNeverTunedOn_ScoresAtLeast(string language, double least)
    {
        var scores = Files("blind").Where(half => half.StartsWith(language, StringComparison.Ordinal))
            .Select(Score).ToList();

        var (cases, misses) = (scores.Sum(score => score.Cases), scores.Sum(score => score.Misses.Count));
        var share = 1 - ((double)misses / cases);
        var told = $"{language}: {cases - misses} of {cases} unseen lines read exactly ({share:P1})";
        output.WriteLine(told);
        Directory.CreateDirectory(Scores);
        File.WriteAllText(Path.Combine(Scores, language + ".txt"), told + "\n");
        Assert.True(share >= least, told);
    }

    private static IEnumerable<string> Files(params string[] halves) =>
        Directory.EnumerateFiles(Folder, "*.jsonl").Select(file => Path.GetFileNameWithoutExtension(file))
            .Where(name => halves.Contains(name[3..])).Order(StringComparer.Ordinal);

    /// <summary>The language and text of every line that the reader was tuned on.</summary>
    internal static IEnumerable<(string Language, string Text)> Lines() => Tuned().SelectMany(half => Cases(half.Data))
        .Select(example => ((string)example["lang"]!, (string)example["text"]!));

    private static List<JsonObject> Cases(string half) =>
        [.. File.ReadLines(Path.Combine(Folder, half + ".jsonl")).Select(line => JsonNode.Parse(line)!.AsObject())];

    private static (int Cases, List<string> Misses) Score(string half)
    {
        var cases = Cases(half);
        return (cases.Count, cases.Select(Miss).OfType<string>().ToList());
    }

    private static string? Miss(JsonObject example)
    {
        var text = (string)example["text"]!;
        var expected = example["expect"]!.AsObject();
        var actual = Plain(TestReader.Sut.Read(text, (string)example["lang"]!));
        // What an example does not name is not in its text, save for two that the shared examples never name.
        var wrong = actual.Where(field => expected.ContainsKey(field.Key) || field.Key is not ("urgent" or "daysAgo"))
            .Where(field => !JsonNode.DeepEquals(field.Value, Expected(expected, field.Key)))
            .Select(field => $"{field.Key} {field.Value?.ToJsonString() ?? "null"}").ToList();
        return wrong.Count == 0 ? null : $"{example["id"]} \"{text}\": {string.Join(", ", wrong)}";
    }

    private static JsonNode? Expected(JsonObject expected, string field) =>
        expected.TryGetPropertyValue(field, out var value)
            ? value
            : Plain(new Reading { Intent = Intent.Unknown })[field];

    private static JsonObject Plain(Reading reading)
    {
        var check = new Dictionary<string, string?>
        {
            ["heat"] = reading.Check.Heat is { } heat ? Canonical.Key(heat) : null,
            ["smell"] = reading.Check.Smell is { } smell ? Canonical.Key(smell) : null,
            ["moisture"] = reading.Check.Moisture is { } moisture ? Canonical.Key(moisture) : null,
            ["pests"] = reading.Check.Pests is { } pests ? Canonical.Key(pests) : null,
        };
        return JsonSerializer.SerializeToNode(new
        {
            intent = Canonical.Key(reading.Intent),
            also = reading.Also.Select(Canonical.Key),
            materials = reading.Materials
                .Select(m => new { material = m.Material, amount = Number(m.Amount), measure = m.Measure }),
            refused = reading.Refused,
            check = check.Where(pair => pair.Value is not null).ToDictionary(),
            language = reading.Language,
            unclear = reading.Unclear,
            groupCode = reading.GroupCode,
            inAddition = reading.InAddition,
            urgent = reading.Urgent,
            daysAgo = reading.DaysAgo,
            bareNumber = Number(reading.BareNumber),
            bareMeasure = reading.BareMeasure,
        })!.AsObject();
    }

    private static double? Number(decimal? value) => (double?)value;
}
