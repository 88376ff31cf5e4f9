using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using HeapText.Carriers.Signing;
using HeapText.Dialog.Engine;
using HeapText.Service.Startup;
using HeapText.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime.Extensions;

namespace HeapText.Service.Tests.Fakes;

/// <summary>The whole service over HTTP on a free port, on a clock of the test's, with the embedded store.</summary>
internal sealed class RunningService : IAsyncDisposable
{
    public const string Secret = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==";
    public const string SecondSecret = "whsec_QUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFB";
    public const string Number = "+99910000001";
    public const string RealNumber = "+256700000001";
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    private readonly WebApplication _app;

    private RunningService(WebApplication app, FaultyStore store, EchoConversation conversation, FakeTimeProvider time)
    {
        _app = app;
        Store = store;
        Conversation = conversation;
        Time = time;
        Http = new HttpClient { BaseAddress = new Uri(app.Urls.Single()) };
    }

    public HttpClient Http { get; }

    public FaultyStore Store { get; }

    public EchoConversation Conversation { get; }

    public FakeTimeProvider Time { get; }

    public LogRecords Logs { get; private init; } = new();

    public IServiceProvider Services => _app.Services;

    public static Task<RunningService> Practice(
        string folder, DateTimeOffset? at = null, string url = "http://127.0.0.1:0") =>
        Open(folder, at ?? Start, url, []);

    /// <summary>A service with one real line, "lake", to a gateway; it echoes unless something else talks.</summary>
    public static Task<RunningService> Real(
        string folder, string gateway = "http://127.0.0.1:9/send",
        IEnumerable<KeyValuePair<string, string?>>? settings = null, IConversation? talks = null) =>
        Open(folder, Start, "http://127.0.0.1:0",
        [
            new("Lines:lake:Url", gateway), new("Lines:lake:From", "4040"),
            new("Lines:lake:Secrets:0", Secret), new("Lines:lake:Secrets:1", SecondSecret),
            new("Store:Secret", Convert.ToBase64String(new byte[32])),
            .. settings ?? [],
        ], talks);

    /// <summary>A service with the lines of a settings file, which send to a gateway of the test's instead of their
    /// own.</summary>
    public static Task<RunningService> OfFile(string folder, string file, string gateway)
    {
        var settings = new ConfigurationBuilder().AddJsonFile(file).Build().AsEnumerable()
            .Where(setting => setting.Value is not null)
            .Select(setting => setting.Key.EndsWith(":Send:Url", StringComparison.Ordinal)
                ? new(setting.Key, gateway + setting.Value![setting.Value!.IndexOf('/', "https://".Length)..])
                : setting);
        return Open(folder, Start, "http://127.0.0.1:0",
            [.. settings, new("Store:Secret", Convert.ToBase64String(new byte[32]))]);
    }

    public Task<HttpResponseMessage> Text(string id, string text, string from = Number) =>
        Post(JsonSerializer.Serialize(new { id, from, to = "4040", text }));

    public Task<HttpResponseMessage> Dial(string session, int step, string input, string from = Number) =>
        Post(JsonSerializer.Serialize(new { session, from, code = "*384#", input, step }), "/ussd/practice");

    public async Task<HttpResponseMessage> Post(
        string body, string path = "/sms/practice", string type = "application/json",
        Action<HttpRequestHeaders>? sign = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body)),
        };
        request.Content.Headers.TryAddWithoutValidation("Content-Type", type);
        sign?.Invoke(request.Headers);
        return await Http.SendAsync(request, Token);
    }

    public async Task<List<JsonElement>> Messages(string to = Number, long after = 0) =>
        await Http.GetFromJsonAsync<List<JsonElement>>($"/practice/messages?to={to}&after={after}", Token) ?? [];

    /// <summary>Messages once there are as many as expected; fails after ten seconds.</summary>
    public async Task<List<JsonElement>> WaitForMessages(int count, string to = Number)
    {
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while (true)
        {
            var messages = await Messages(to);
            if (messages.Count >= count) return messages;
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
        }
    }

    public async Task<DateTimeOffset> Advance(string duration)
    {
        using var answer = await Http.PostAsJsonAsync("/practice/clock", new { advance = duration }, Token);
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Token)).GetProperty("now").GetDateTimeOffset();
    }

    public static void SignWith(
        string secret, HttpRequestHeaders headers, string body, DateTimeOffset at, string id = "w-1")
    {
        Assert.True(WebhookKey.TryParse(secret, out var key));
        headers.Add(WebhookSignature.IdHeader, id);
        headers.Add(WebhookSignature.TimestampHeader, at.ToUnixTimeSeconds().ToString(Invariant));
        headers.Add(
            WebhookSignature.SignatureHeader,
            WebhookSignature.Write([key], id, at.ToInstant(), Encoding.UTF8.GetBytes(body)));
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        var stopping = _app.StopAsync(CancellationToken.None);
        while (!stopping.IsCompleted)
        {
            // What is under way may be waiting for this clock.
            Time.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(stopping, Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System));
        }
        await stopping;
        await _app.DisposeAsync();
    }

    private static async Task<RunningService> Open(
        string folder, DateTimeOffset at, string url, IEnumerable<KeyValuePair<string, string?>> settings,
        IConversation? talks = null)
    {
        var builder = WebApplication.CreateBuilder();
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddInMemoryCollection(
            [.. settings, new("Store:DataDirectory", folder), new("Urls", url)]);
        var logs = new LogRecords();
        builder.Logging.ClearProviders().AddProvider(logs).SetMinimumLevel(LogLevel.Trace);

        var read = SettingsReader.Read(builder.Configuration, fresh: false);
        var time = new FakeTimeProvider(at);
        var practice = read.IsPractice ? await PracticeParts.Open(folder, time) : null;
        var store = new FaultyStore(await StoreFactory.Open(read.Store, time: practice?.Clock ?? (TimeProvider)time));
        var conversation = new EchoConversation();
        var app = ServiceHost.Build(builder, read, new Parts(store, talks ?? conversation, time, practice));
        await app.StartAsync(Token);
        return new RunningService(app, store, conversation, time) { Logs = logs };
    }
}
