using System.Globalization;
using System.Text.Json;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using HeapText.Service.Hooks;
using HeapText.Service.Startup;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Service.Practice;

/// <summary>What practice mode adds: what phones got, the clock, the trainer's list.</summary>
internal static class PracticeRoutes
{
    private const int MostConcerns = 100;
    private const int LongestDays = 400;

    /// <summary>Maps the routes; called in practice mode only.</summary>
    public static void MapPractice(this IEndpointRouteBuilder routes)
    {
        var practice = routes.MapGroup("/practice").AddEndpointFilter(AskToComeAgain);
        practice.MapGet("/messages", Messages).WithSummary("Messages sent to a number, oldest first.");
        practice.MapGet("/thread", Thread).WithSummary("Messages of a number both ways, oldest first.");
        practice.MapGet("/clock", (PracticeClock clock) => new ClockReading(Iso(clock.Now)))
            .WithSummary("The practice time.");
        practice.MapPost("/clock", Advance)
            .WithSummary("Moves the practice clock on, and answers once all that fell due is done.");
        practice.MapGet("/next", async (PracticeTime time, CancellationToken cancel) =>
                new NextWake(await time.Next(cancel) is { } at ? Iso(at) : null))
            .WithSummary("When something falls due next; null when nothing waits.");
        practice.MapGet("/village", Village).WithSummary("The groups, and the time zone they live in.");
        practice.MapPost("/fit", Measure).WithSummary("What a text takes on a phone.");
        practice.MapWords();
        practice.MapGet("/concerns", Concerns).WithSummary("Farmers who wait for the trainer, numbers masked.");
    }

    private static async ValueTask<object?> AskToComeAgain(
        EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        try
        {
            return await next(context);
        }
        catch (Exception fault) when (fault is StoreUnavailableException or SqliteException)
        {
            return Faults.StoreGone(context.HttpContext);
        }
    }

    private static async Task<IResult> Messages(string? to, string? after, PracticeJournal journal)
    {
        if (ReadNumber("to", to, out var number) is { } fault) return fault;
        var last = 0L;
        if (after is not null && !long.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out last))
            return Faults.BadRequest("after: it is not a whole number; send the n of the last message you have.");
        return TypedResults.Ok((await journal.Messages(number.Value, last, bothWays: false))
            .Select(m => new MessageView(m.N, m.Id, m.Number, m.Text, m.Encoding, m.Segments, Iso(m.At))));
    }

    private static async Task<IResult> Thread(string? number, PracticeJournal journal) =>
        ReadNumber("number", number, out var of) is { } fault
            ? fault
            : TypedResults.Ok((await journal.Messages(of.Value, 0, bothWays: true))
                .OrderBy(m => m.At).ThenBy(m => m.Way, StringComparer.Ordinal).ThenBy(m => m.N)
                .Select(m => new ThreadMessage(m.N, m.Way, m.Text, m.Encoding, m.Segments, Iso(m.At))));

    private static async Task<IResult> Advance(
        HttpRequest request, PracticeTime time, PracticeClock clock, CancellationToken cancel)
    {
        if (!HookBody.IsJson(request.Headers)) return Faults.NotJson();
        if (ReadAdvance(await ReadField(request, "advance", cancel)) is not { } by)
        {
            return Faults.BadRequest($"advance: send an ISO 8601 duration above zero and up to {LongestDays} days, "
                + "in weeks, days, hours, minutes and seconds, in a JSON object like {\"advance\":\"P1DT2H\"}.");
        }

        await time.Advance(by, cancel);
        return TypedResults.Ok(new ClockReading(Iso(clock.Now)));
    }

    private static async Task<string?> ReadField(HttpRequest request, string field, CancellationToken cancel)
    {
        if (await HookBody.Read(request, cancel) is not { } body) return null;
        try
        {
            using var document = JsonDocument.Parse(body);
            return document.RootElement.ValueKind == JsonValueKind.Object
                && document.RootElement.TryGetProperty(field, out var value)
                && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static async Task<IResult> Measure(HttpRequest request, CancellationToken cancel)
    {
        if (!HookBody.IsJson(request.Headers)) return Faults.NotJson();
        if (await ReadField(request, "text", cancel) is not { } text)
            return Faults.BadRequest("text: send a string in a JSON object like {\"text\":\"HEAP\"}.");
        var fitting = Fit.Measure(text);
        return TypedResults.Ok(new TextMeasure(
            fitting.EncodingName, fitting.Units, fitting.Segments, MostUnits(fitting)));
    }

    private static Duration? ReadAdvance(string? text)
    {
        if (text is null) return null;
        var reading = PeriodPattern.NormalizingIso.Parse(text);
        // Months and years have no length of their own.
        if (!reading.Success || reading.Value is not { Months: 0, Years: 0 } period) return null;
        try
        {
            var by = period.ToDuration();
            return by > Duration.Zero && by <= Duration.FromDays(LongestDays) ? by : null;
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    private static async Task<VillageView> Village(IStore store, CancellationToken cancel)
    {
        var groups = await store.Groups(cancel);
        return new VillageView(
            groups.Count == 0 ? "UTC" : groups[0].Zone,
            groups.Select(group => new GroupView(group.Code, group.Name)));
    }

    private static async Task<IEnumerable<ConcernRow>> Concerns(
        IStore store, Settings settings, WordBook book, CancellationToken cancel)
    {
        var groups = (await store.Groups(cancel)).ToDictionary(group => group.Code, group => group.Name);
        return (await store.Concerns(MostConcerns, cancel))
            .Select(open => (Open: open, Words: WordRoutes.Unexplained(open.Farmer, settings.Office(), book)))
            // A word explained at night keeps its farmer waiting until the morning, but the trainer no more.
            .Where(row => row.Words.Count > 0
                || row.Open.Concern is not { Reason: ConcernReason.UnknownWord, Others.Count: 0 })
            .Select(row => new ConcernRow(
                row.Open.Number.Masked,
                row.Open.Farmer.Group is { } code ? groups.GetValueOrDefault(code) : null,
                JsonNamingPolicy.KebabCaseLower.ConvertName(row.Open.Concern.Reason.ToString()),
                Iso(row.Open.Concern.Since),
                row.Words));
    }

    // 3GPP TS 23.038 and TS 23.040: a message, and a part of a longer one.
    private static int MostUnits(Fitting fitting) => (fitting.Encoding, fitting.Segments) switch
    {
        (TextEncoding.Gsm7, 1) => 160,
        (TextEncoding.Gsm7, var parts) => 153 * parts,
        (_, 1) => 70,
        (_, var parts) => 67 * parts,
    };

    private static ProblemHttpResult? ReadNumber(string field, string? text, out Msisdn number)
    {
        number = default;
        // A "+" not escaped in a query arrives as a space.
        var reading = NumberReader.ReadPractice("+" + (text ?? "").Trim().TrimStart('+'));
        if (reading is NumberReading.Bad bad) return Faults.BadRequest($"{field}: {bad.Why}.");
        number = ((NumberReading.Good)reading).Number;
        return null;
    }

    private static string Iso(Instant at) => InstantPattern.ExtendedIso.Format(at);
}
