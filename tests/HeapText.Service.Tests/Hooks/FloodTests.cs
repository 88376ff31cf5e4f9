using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Startup;
using HeapText.Service.Tests.Fakes;
using NodaTime.Extensions;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace HeapText.Service.Tests.Hooks;

/// <summary>Texts from ever new numbers that nobody knows.</summary>
public sealed class FloodTests
{
    private const int Numbers = 10_000;
    private const int Cap = 1_000;
    private const int Sampled = 97;

    [Fact]
    public async Task Texts_OfTenThousandUnknownNumbers_GetOneReplyEachAnHourWithinTheDaysCap()
    {
        using var folder = new TempFolder();
        using var gateway = WireMockServer.Start();
        gateway.Given(Request.Create()).RespondWith(Response.Create().WithStatusCode(202));
        await using var service = await Open(folder.Path, gateway);

        await Parallel.ForAsync(0, Numbers * 2, Token, (n, _) => Text(service, n % Numbers, $"first-{n}"));
        var sent = await Sent(service, gateway);
        service.Time.Advance(TimeSpan.FromMinutes(61));
        for (var n = 0; n < Numbers; n += Sampled) await Text(service, n, $"later-{n}");

        Assert.InRange(sent, Cap / 2, Cap);
        Assert.InRange(await Sent(service, gateway), Cap / 2, Cap);
        for (var n = 0; n < Numbers; n += Sampled)
            Assert.Equal(2, (await Begin(service, n)).Farmer!.MessagesMade);
    }

    private static Task<RunningService> Open(string folder, WireMockServer gateway)
    {
        var talks = new Conversation(DialogsAtStart.Load(setting: null), new Dictionary<int, Group>(), new Office());
        return RunningService.Real(
            folder, $"{gateway.Url}/send",
            [
                new("Lines:lake:SegmentsPerSecond", "200"), new("Spend:SegmentsPerDay", $"{Cap}"),
                new("Lines:lake:Region", "UG"),
            ],
            talks);
    }

    private static async ValueTask Text(RunningService service, int n, string id)
    {
        var body = $$"""{"id":"{{id}}","from":"{{Number(n)}}","to":"4040","text":"hello"}""";
        using var answer = await service.Post(body, "/sms/lake", sign: headers => RunningService.SignWith(
            RunningService.Secret, headers, body, service.Time.GetUtcNow(), $"w-{id}"));
        Assert.Equal(System.Net.HttpStatusCode.Accepted, answer.StatusCode);
    }

    /// <summary>How many segments the gateway has got once it gets no more for a minute.</summary>
    private static async Task<int> Sent(RunningService service, WireMockServer gateway)
    {
        for (var (quiet, before) = (0, -1); quiet < 60; before = gateway.LogEntries.Count)
        {
            service.Time.Advance(TimeSpan.FromSeconds(1));
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, Token);
            quiet = gateway.LogEntries.Count == before ? quiet + 1 : 0;
        }
        return gateway.LogEntries.Sum(entry => System.Text.Json.JsonDocument.Parse(entry.RequestMessage!.Body!)
            .RootElement.GetProperty("segments").GetInt32());
    }

    private static ValueTask<TurnStart> Begin(RunningService service, int n)
    {
        Assert.True(Msisdn.TryParse(Number(n), out var number));
        return service.Store.Begin(service.Store.KeyOf(number), null, service.Time.GetUtcNow().ToInstant(), Token);
    }

    private static string Number(int n) => $"+25670{n:D7}";
}
