using System.CommandLine;
using System.Text.Json.Nodes;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;
using HeapText.Service.Turns;
using NodaTime.Extensions;

namespace HeapText.Service.Verbs;

/// <summary>word: what farmers' own words mean, in the configured store, while the service runs or not.</summary>
internal static class WordVerb
{
    private const string Actor = "command-line";

    public static Command Create() => new("word", "Explains farmers' own words, each for a district.")
    {
        CreateAdd(), CreateList(),
    };

    private static Command CreateAdd()
    {
        var district = new Option<string>("--district") { Required = true, Description = "Where the word is used." };
        var language = new Option<string>("--language") { Required = true, Description = "Its language, like sw." };
        var word = new Argument<string>("word") { Description = "The word." };
        var material = new Argument<string>("material")
        {
            Description = $"Key or name of a material, one that never goes in included; {WordDesk.Nothing} to pass "
                + "the word over.",
        };
        var add = new Command("add", "Explains a word; the running service takes it up within seconds.")
        {
            district, language, word, material,
        };
        return StoreVerb.With(add, (parsed, settings) => Add(settings,
            new WordForm(parsed.GetValue(district), parsed.GetValue(language), parsed.GetValue(word),
                parsed.GetValue(material)), parsed.InvocationConfiguration));
    }

    private static Command CreateList() => StoreVerb.With(
        new Command("list", "The words explained so far, and those that farmers wait for."),
        (parsed, settings) => List(settings, parsed.InvocationConfiguration));

    private static async Task<int> Add(Settings settings, WordForm form, InvocationConfiguration console)
    {
        var dialogs = DialogsAtStart.Load(settings.Dialogs);
        await using var store = await RecordsAtStart.OpenBeside(settings.Store);
        var desk = new WordDesk(store, settings.Office());
        var (word, fault) = form.Read(await desk.Districts(CancellationToken.None), dialogs.Book, dialogs.Reader);
        if (word is null)
        {
            await console.Error.WriteLineAsync(fault);
            return ExitCodes.BadInput;
        }
        await desk.Explain(word, Actor, TimeProvider.System.GetUtcNow().ToInstant(), CancellationToken.None);
        TextLines.Write(console.Output, Document(word));
        return ExitCodes.Done;
    }

    private static async Task<int> List(Settings settings, InvocationConfiguration console)
    {
        await using var store = await RecordsAtStart.OpenBeside(settings.Store);
        var desk = new WordDesk(store, settings.Office());
        var explained = await store.OwnWords(CancellationToken.None);
        var known = explained.Select(word => (word.District, word.Word)).ToHashSet();
        var waiting = (await desk.Waiting(CancellationToken.None))
            .SelectMany(one => one.Open.Farmer.UnknownWords
                .Select(unknown => (one.District, unknown.Word, one.Open.Farmer.Language)))
            .Where(one => !known.Contains((one.District, one.Word)))
            .GroupBy(one => one)
            .OrderBy(same => same.Key.District, StringComparer.Ordinal)
            .ThenBy(same => same.Key.Word, StringComparer.Ordinal)
            .Select(same => new JsonObject
            {
                ["district"] = same.Key.District,
                ["language"] = same.Key.Language,
                ["word"] = same.Key.Word,
                ["farmers"] = same.Count(),
            });
        TextLines.Write(console.Output, new JsonObject
        {
            ["words"] = new JsonArray([.. explained.Select(Document)]),
            ["waiting"] = new JsonArray([.. waiting]),
        });
        return ExitCodes.Done;
    }

    private static JsonObject Document(OwnWord word) => new()
    {
        ["district"] = word.District,
        ["language"] = word.Language,
        ["word"] = word.Word,
        ["material"] = word.Material,
    };
}
