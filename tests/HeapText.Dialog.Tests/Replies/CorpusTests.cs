using System.Text.Json;
using System.Text.Json.Nodes;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Texts as farmers may write them, each with the reading it should have.</summary>
public sealed class CorpusTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("en-examples", 1.00)]
    [InlineData("sw-examples", 1.00)]
    [InlineData("en-tuning", 1.00)]
    [InlineData("sw-tuning", 1.00)]
    [InlineData("am-tuning", 1.00)]
    [InlineData("en-scoring", 0.90)]
    [InlineData("sw-scoring", 0.90)]
    [InlineData("en-blind", 0.83)]
    [InlineData("sw-blind", 0.79)]
    [InlineData("pt-tuning", 1.00)]
    [InlineData("pt-blind", 0.91)]
    [InlineData("fr-examples", 1.00)]
    [InlineData("fr-tuning", 1.00)]
    [InlineData("am-blind", 0.92)]
    public void Read_CorpusHalf_ScoresAtLeast(string half, double least)
    {
        var cases = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Replies", "Corpus", half + ".jsonl"))
            .Select(line => JsonNode.Parse(line)!.AsObject()).ToList();

        var misses = cases.Select(Miss).OfType<string>().ToList();

        var score = 1 - ((double)misses.Count / cases.Count);
        output.WriteLine($"{half}: {cases.Count - misses.Count} of {cases.Count} exact ({score:P1})");
        misses.ForEach(output.WriteLine);
        Assert.True(score >= least, $"{half} scores {score:P1}: {string.Join("\n", misses)}");
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
