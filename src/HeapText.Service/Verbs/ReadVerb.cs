using System.CommandLine;
using System.Text.Json.Nodes;
using HeapText.Dialog.Replies;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>read</c>: what a farmer's text says, in the canonical keys.</summary>
internal static class ReadVerb
{
    public static Command Create()
    {
        var command = new Command("read", "Reads farmers' texts and writes what they say as JSON.");
        var (text, lines) = TextLines.AddTo(command);
        var language = new Option<string?>("--lang") { Description = "The farmer's language, by its two-letter code." };
        var dialogs = new Option<string?>("--dialogs") { Description = "The dialogs folder, if not this program's." };
        command.Add(language);
        command.Add(dialogs);
        command.Validators.Add(parsed =>
        {
            if (!parsed.GetValue(lines) && string.IsNullOrEmpty(parsed.GetValue(language)))
                parsed.AddError("Say the language of the text with --lang.");
        });
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            var folder = parsed.GetValue(dialogs) ?? DialogsFolder.Find();
            return parsed.GetValue(lines)
                ? RunLines(folder, Console.In, output, error)
                : Run(folder, parsed.GetValue(language)!, parsed.GetValue(text)!, output, error);
        });
        return command;
    }

    internal static int Run(string? folder, string language, string text, TextWriter output, TextWriter error)
    {
        if (Load(folder, error) is not { } reader)
            return ExitCodes.BadInput;
        if (FaultOf(reader, language) is { } fault)
        {
            error.WriteLine(fault);
            return ExitCodes.BadInput;
        }

        TextLines.Write(output, Document(reader.Read(text, language)));
        return ExitCodes.Done;
    }

    internal static int RunLines(string? folder, TextReader input, TextWriter output, TextWriter error)
    {
        if (Load(folder, error) is not { } reader)
            return ExitCodes.BadInput;
        return TextLines.Run(input, output, error, line =>
        {
            var language = TextLines.TextOf(line.Document, "lang") ?? "";
            return FaultOf(reader, language) is { } fault
                ? (null, fault)
                : (new JsonObject { ["id"] = line.Id, ["reading"] = Document(reader.Read(line.Text, language)) }, null);
        });
    }

    private static Reader? Load(string? folder, TextWriter error)
    {
        var load = folder is null ? null : Lexicon.Load(folder);
        if (load is { Faults.Count: 0 })
            return new Reader(load.Lexicons);
        error.WriteLine(load is null
            ? "dialogs: no dialogs folder found; name one with --dialogs"
            : $"dialogs: {load.Faults.Count} faults, the first {load.Faults[0]}");
        return null;
    }

    private static string? FaultOf(Reader reader, string language) => reader.Languages.Contains(language)
        ? null
        : $"lang: there is no language '{language}'; use one of {string.Join(", ", reader.Languages.Order())}";

    private static JsonObject Document(Reading reading)
    {
        var document = Told(reading);
        var ambiguous = reading.Materials.Concat(reading.Unsettled).Where(m => m.Choices.Count > 0).ToList();
        if (ambiguous.Count > 0) document["choices"] = new JsonArray([.. ambiguous.Select(Choices)]);
        var unknown = reading.Unsettled.Where(m => m.Choices.Count == 0).ToList();
        if (unknown.Count > 0)
            document["unknownWords"] = new JsonArray([.. unknown.Select(m => JsonValue.Create(m.Word))]);
        if (reading.Urgent) document["urgent"] = true;
        return document;
    }

    private static JsonObject Choices(ReadMaterial material) => new()
    {
        ["word"] = material.Word,
        ["materials"] = new JsonArray([.. material.Choices.Select(key => JsonValue.Create(key))]),
        ["amount"] = material.Amount,
        ["measure"] = material.Measure,
    };

    private static JsonObject Told(Reading reading) => new()
    {
        ["intent"] = Canonical.Key(reading.Intent),
        ["also"] = new JsonArray([.. reading.Also.Select(intent => JsonValue.Create(Canonical.Key(intent)))]),
        ["materials"] = new JsonArray([.. reading.Materials.Select(Document)]),
        ["refused"] = new JsonArray([.. reading.Refused.Select(key => JsonValue.Create(key))]),
        ["check"] = Document(reading.Check),
        ["language"] = reading.Language,
        ["unclear"] = reading.Unclear,
    };

    private static JsonObject Document(ReadMaterial material) => new()
    {
        ["material"] = material.Material,
        ["amount"] = material.Amount,
        ["measure"] = material.Measure,
    };

    /// <summary>Only what was reported.</summary>
    private static JsonObject Document(ReadCheck check)
    {
        var document = new JsonObject();
        Add("heat", check.Heat);
        Add("smell", check.Smell);
        Add("moisture", check.Moisture);
        Add("pests", check.Pests);
        return document;

        void Add<T>(string field, T? answer) where T : struct, Enum
        {
            if (answer is { } given)
                document[field] = Canonical.Key(given);
        }
    }
}
