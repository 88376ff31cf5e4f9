using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace HeapText.Service.Verbs;

/// <summary>What the verbs that take one text, or JSON Lines of texts, have in common.</summary>
internal static class TextLines
{
    private static readonly JsonSerializerOptions Compact = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly JsonDocumentOptions OneOfEachKey = new() { AllowDuplicateProperties = false };

    /// <summary>A text as it stands in a line: its id, the object it came in and the words.</summary>
    internal sealed record Line(JsonNode Id, JsonObject Document, string Text);

    /// <summary>The argument TEXT, which is wanted exactly when <c>--lines</c> is not given.</summary>
    internal static (Argument<string?> Text, Option<bool> Lines) AddTo(Command command)
    {
        var text = new Argument<string?>("text") { Arity = ArgumentArity.ZeroOrOne, Description = "The text." };
        var lines = new Option<bool>("--lines") { Description = "Reads JSON Lines on standard input instead." };
        command.Add(text);
        command.Add(lines);
        command.Validators.Add(parsed =>
        {
            if (parsed.GetValue(lines) == parsed.GetResult(text) is { Tokens.Count: > 0 })
                parsed.AddError("Give either one text or --lines.");
        });
        return (text, lines);
    }

    /// <summary>Writes one document on one line.</summary>
    internal static void Write(TextWriter output, JsonNode document) =>
        output.WriteLine(document.ToJsonString(Compact));

    /// <summary>Answers every line in turn; stops at the first that cannot be read.</summary>
    /// <param name="input">JSON Lines; blank ones are passed over.</param>
    /// <param name="output">Takes one document for each line.</param>
    /// <param name="error">Takes one line when something is wrong.</param>
    /// <param name="answer">Gives the document for a line, or the fault, which starts with the field's name.</param>
    /// <returns>The exit code.</returns>
    internal static int Run(
        TextReader input, TextWriter output, TextWriter error, Func<Line, (JsonObject? Document, string? Fault)> answer)
    {
        for (var number = 1; input.ReadLine() is { } row; number++)
        {
            if (string.IsNullOrWhiteSpace(row))
                continue;
            var (line, fault) = Parse(row);
            JsonObject? document = null;
            if (line is not null)
                (document, fault) = answer(line);
            if (document is null)
            {
                error.WriteLine($"line {number}: {fault}");
                return ExitCodes.BadInput;
            }

            Write(output, document);
        }

        return ExitCodes.Done;
    }

    /// <summary>A field that must hold text; null when it is missing, no text, or no whole characters.</summary>
    internal static string? TextOf(JsonObject document, string field)
    {
        try
        {
            return document[field] is JsonValue value && value.TryGetValue(out string? text) ? text : null;
        }
        catch (InvalidOperationException)
        {
            return null; // half of a surrogate pair, which JSON text can spell but not hold
        }
    }

    private static (Line?, string?) Parse(string row)
    {
        JsonNode? node;
        try
        {
            node = JsonNode.Parse(row, null, OneOfEachKey);
        }
        catch (JsonException fault)
        {
            return (null, $"not JSON: {fault.Message.ReplaceLineEndings(" ")}");
        }

        if (node is not JsonObject document)
            return (null, "must be a JSON object with id and text");
        if (document["id"] is not JsonValue id)
            return (null, "id: must be given, as text or a number");
        return TextOf(document, "text") is { } text
            ? (new Line(id.DeepClone(), document, text), null)
            : (null, "text: must be given, as text");
    }
}
