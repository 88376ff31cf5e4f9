using System.Text.Json;
using HeapText.Agronomy.Materials;
using HeapText.Dialog.Engine;
using HeapText.Service.Hooks;
using HeapText.Service.Turns;
using HeapText.Service.Workers;
using NodaTime.Extensions;

namespace HeapText.Service.Practice;

/// <summary>How a word of a farmer's is explained in practice mode.</summary>
internal static class WordRoutes
{
    private const string Actor = "practice";

    /// <summary>Maps the routes; called in practice mode only.</summary>
    public static void MapWords(this IEndpointRouteBuilder practice)
    {
        practice.MapGet("/materials", Materials).WithSummary("The materials by which a word can be explained.");
        practice.MapPost("/words", Explain)
            .WithSummary("Explains a word for a district, and answers once who waits for it is told.");
    }

    /// <summary>The words of a farmer's that wait for the trainer.</summary>
    public static IReadOnlyList<WaitingWord> Unexplained(Farmer farmer, Office office, WordBook book)
    {
        if (farmer.Group is not { } code) return [];
        var district = office.DistrictOf(code);
        return [.. farmer.UnknownWords.Where(unknown => book.Find(district, unknown.Word) is null)
            .Select(unknown => new WaitingWord(district, farmer.Language, unknown.Word))];
    }

    private static IEnumerable<MaterialView> Materials(MaterialNames names) => MaterialTable.All
        .Select(material => new MaterialView(material.Key, names.Of(material.Key), material.IsRefused))
        .OrderBy(material => material.Refused).ThenBy(material => material.Name, StringComparer.Ordinal);

    private static async Task<IResult> Explain(
        HttpRequest request, WordDesk desk, WordWorker worker, WordBook book, MaterialNames names, TimeProvider time,
        CancellationToken cancel)
    {
        if (!HookBody.IsJson(request.Headers)) return Faults.NotJson();
        if (await ReadForm(request, cancel) is not { } form)
            return Faults.BadRequest("word: send district, language, word and material in a JSON object.");
        var (word, fault) = form.Read(await desk.Districts(cancel), names.Book, book.Basic);
        if (word is null) return Faults.BadRequest($"{fault}.");
        await desk.Explain(word, Actor, time.GetUtcNow().ToInstant(), cancel);
        await worker.RunOnce(cancel);
        return TypedResults.Ok(new ExplainedWord(word.District, word.Word, word.Material));
    }

    private static async Task<WordForm?> ReadForm(HttpRequest request, CancellationToken cancel)
    {
        if (await HookBody.Read(request, cancel) is not { } body) return null;
        try
        {
            return JsonSerializer.Deserialize<WordForm>(body.Span, JsonSerializerOptions.Web);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
