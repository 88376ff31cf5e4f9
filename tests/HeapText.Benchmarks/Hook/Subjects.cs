using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Health;
using HeapText.Service.Hooks;
using HeapText.Service.Turns;
using HeapText.Service.Verbs;
using HeapText.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Benchmarks.Hook;

/// <summary>What is measured: the hook on the embedded store, and its controls on the same web server and
/// store.</summary>
internal sealed class Subjects : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly IStore _store;
    private readonly string _folder;
    private readonly IReadOnlyList<Reaction> _season;

    private Subjects(WebApplication app, IStore store, string folder, Conversation conversation) =>
        (_app, _store, _folder, Conversation, _season) = (app, store, folder, conversation, Decided(conversation));

    public Conversation Conversation { get; }

    public Uri HookUrl => new(_app.Urls.First() + "/sms/practice");

    public Uri UssdUrl => new(_app.Urls.First() + "/ussd/practice");

    public Uri BareUssdUrl => new(_app.Urls.First() + "/bare-ussd");

    public Uri BareUrl => new(_app.Urls.First() + "/bare");

    public Uri BareCommitUrl => new(_app.Urls.First() + "/bare-commit");

    public static async Task<Subjects> Open()
    {
        var folder = Directory.CreateTempSubdirectory("heaptext-bench").FullName;
        var store = await StoreFactory.Open(new StoreOptions { DataDirectory = folder });
        var (dialogs, _) = DialogSet.Load(DialogsFolder.Find()!);
        var group = new Group(41, "Upper Ziwani", "en", "Africa/Nairobi", "Trainer, Marula Flats");
        var conversation = new Conversation(dialogs!, new Dictionary<int, Group> { [41] = group },
            new Office());
        var line = InboundLine.OfPractice();

        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(store).AddSingleton<IConversation>(conversation).AddSingleton(TimeProvider.System)
            .AddSingleton<WorkSignals>().AddSingleton<TurnRunner>().AddSingleton<LastCommit>()
            .AddSingleton<IReceiver>(provider => provider.GetRequiredService<TurnRunner>())
            .AddSingleton<IReadOnlyDictionary<string, InboundLine>>(
                new Dictionary<string, InboundLine> { [line.Name] = line });
        var app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        app.MapSmsHook();
        app.MapUssdHook();
        var subjects = new Subjects(app, store, folder, conversation);
        subjects.MapControls(app, line);
        await app.StartAsync();
        return subjects;
    }

    /// <summary>One read and one commit of what the turn of this text decides, decided beforehand.</summary>
    public async Task CommitOnce(FarmerText text)
    {
        if (!Msisdn.TryParse(text.From, out var number)) throw new ArgumentException("no number", nameof(text));
        var now = TimeProvider.System.GetUtcNow().ToInstant();
        var key = _store.KeyOf(number);
        var decided = _season[text.Step];
        var start = await _store.Begin(key, new SeenId("control", text.Id), now, CancellationToken.None);
        await _store.Commit(new Commit
        {
            Key = key,
            Number = number,
            ExpectedVersion = start.Version,
            Seen = new SeenId("control", text.Id),
            At = now,
            Farmer = decided.Farmer,
            NextDue = now + Duration.FromDays(3),
            Send = [.. decided.Says.Select((says, i) => says with { Id = $"{text.Id}-{i}", NotBefore = now })],
        }, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        await _store.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private static List<Reaction> Decided(Conversation conversation)
    {
        List<Reaction> season = [];
        var now = TimeProvider.System.GetUtcNow().ToInstant();
        foreach (var text in FarmerText.Season)
            season.Add(conversation.Hear(season.LastOrDefault()?.Farmer, "bench", "practice", text, now));
        return season;
    }

    private void MapControls(IEndpointRouteBuilder routes, InboundLine line)
    {
        routes.MapPost("/bare", async (HttpContext context) => await Parse(context, line) is null
            ? Results.BadRequest()
            : TypedResults.Accepted((string?)null, new HookAccepted(true, false)));
        routes.MapPost("/bare-ussd", async (HttpContext context) =>
            await HookBody.Read(context.Request, context.RequestAborted) is { } body
            && UssdBody.Read(body, line, out _) is { } step
                ? Results.Ok(new UssdScreen(step.Input, true))
                : Results.BadRequest());
        routes.MapPost("/bare-commit", async (HttpContext context) =>
        {
            if (await Parse(context, line) is not { } message) return Results.BadRequest();
            await CommitOnce(new FarmerText(message.Id, message.From.Value, []));
            return TypedResults.Accepted((string?)null, new HookAccepted(true, false));
        });
    }

    private static async Task<Inbound?> Parse(HttpContext context, InboundLine line) =>
        await HookBody.Read(context.Request, context.RequestAborted) is { } body
            ? SmsBody.Read(body, line, out _)
            : null;
}
