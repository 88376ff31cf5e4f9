using System.Text.Json.Nodes;
using HeapText.Dialog.Wording;
using Json.Schema;

namespace HeapText.Dialog.Tests.Wording;

/// <summary>What editors are told of the files is what the loaders take.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string, string> Files()
    {
        TheoryData<string, string> files = [];
        foreach (var folder in Directory.GetDirectories(Repository.Path("dialogs")).Select(Path.GetFileName))
        {
            if (folder == "schema") continue;
            files.Add(folder!, "text");
            files.Add(folder!, "words");
        }
        return files;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Schema_FileAsShipped_Allows(string language, string kind)
    {
        var results = Evaluate(kind, Node(MarkedYamlOf(language, kind)));

        Assert.True(results.IsValid, string.Join("\n", Errors(results)));
    }

    [Theory]
    [InlineData("text", "avoid")]
    [InlineData("text", "plurals")]
    [InlineData("text", "messages")]
    [InlineData("words", "intents")]
    [InlineData("words", "provenance")]
    public void Schema_PartThatTheLoaderWants_IsRequired(string kind, string part)
    {
        var file = Node(MarkedYamlOf("en", kind)).AsObject();
        file.Remove(part);

        Assert.False(Evaluate(kind, file).IsValid);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("words")]
    public void Schema_UnknownPart_IsRefused(string kind)
    {
        var file = Node(MarkedYamlOf("en", kind)).AsObject();
        file["colours"] = new JsonObject();

        Assert.False(Evaluate(kind, file).IsValid);
    }

    [Fact]
    public void Schema_PartsOfText_AreThoseOfTheLoader()
    {
        var schema = JsonNode.Parse(File.ReadAllText(SchemaPath("text")))!;

        Assert.Equal(TextFileLoader.Parts.Order(), schema["properties"]!.AsObject().Select(part => part.Key).Order());
        Assert.Equal(TextFileLoader.Parts.Except(TextFileLoader.MayMiss).Order(),
            schema["required"]!.AsArray().Select(part => (string)part!).Order());
    }

    private static EvaluationResults Evaluate(string kind, JsonNode file) =>
        JsonSchema.FromText(File.ReadAllText(SchemaPath(kind)))
            .Evaluate(file, new EvaluationOptions { OutputFormat = OutputFormat.List });

    private static IEnumerable<string> Errors(EvaluationResults results) => results.Details
        .Where(detail => detail.HasErrors)
        .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"));

    private static string SchemaPath(string kind) => Repository.Path("dialogs", "schema", $"{kind}.schema.json");

    private static MarkedYaml MarkedYamlOf(string language, string kind)
    {
        using var reader = File.OpenText(Repository.Path("dialogs", language, $"{kind}.yml"));
        return MarkedYaml.Read(reader);
    }

    // As an editor reads it: true and false are no texts.
    private static JsonNode Node(MarkedYaml yaml) => yaml switch
    {
        MarkedYaml.Text { Value: "true" or "false" } flag => JsonValue.Create(flag.Value == "true"),
        MarkedYaml.Text text => JsonValue.Create(text.Value),
        MarkedYaml.List list => new JsonArray([.. list.Items.Select(Node)]),
        MarkedYaml.Map map => new JsonObject(map.Entries.Select(entry =>
            KeyValuePair.Create<string, JsonNode?>(entry.Key.Value, Node(entry.Value)))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
