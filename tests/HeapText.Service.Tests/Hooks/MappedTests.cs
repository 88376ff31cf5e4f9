using System.Net.Http.Headers;
using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Rules;
using WireMock;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace HeapText.Service.Tests.Hooks;

/// <summary>Tests of one example of docs/lines, run as it stands there against a gateway that speaks its
/// form.</summary>
public abstract class MappedTests(string example) : IAsyncLifetime
{
    private readonly TempFolder _folder = new();

    private protected WireMockServer Gateway { get; } = WireMockServer.Start();

    private protected RunningService Service { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Service = await RunningService.OfFile(
        _folder.Path, Path.Combine(RepositoryFolder.Find(), "docs", "lines", "examples", example), Gateway.Url!);

    public async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        Gateway.Dispose();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    private protected void GatewayAnswers(string body, int status = 200) => Gateway
        .Given(Request.Create().UsingAnyMethod())
        .RespondWith(Response.Create().WithStatusCode(status).WithBody(body));

    private protected Task<HttpResponseMessage> Post(
        string path, string body, string type, Action<HttpRequestHeaders> prove) =>
        Service.Post(body, path, type, prove);

    private protected async Task<HttpResponseMessage> Get(string target, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, target);
        foreach (var (name, value) in headers) request.Headers.Add(name, value);
        return await Service.Http.SendAsync(request, Token);
    }

    /// <summary>What the gateway got, once it is as much as expected; fails after half a minute.</summary>
    /// <param name="count">How much is expected.</param>
    /// <param name="step">By how much time goes on while waiting; none by default, so that no send runs late.</param>
    private protected async Task<IReadOnlyList<IRequestMessage>> Sent(int count, TimeSpan step = default)
    {
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (Gateway.LogEntries.Count < count)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
            Service.Time.Advance(step);
        }

        return [.. Gateway.LogEntries.Select(entry => entry.RequestMessage!)];
    }

    /// <summary>How the farmer's messages ended, oldest first, once so many are settled; fails after half a
    /// minute.</summary>
    private protected async Task<IReadOnlyList<SentMessage>> Outcomes(string number, int count)
    {
        Assert.True(Msisdn.TryParse(number, out var farmer));
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (true)
        {
            var sent = await Service.Store.Sent(Service.Store.KeyOf(farmer), Token);
            if (sent.Count >= count) return sent;
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
        }
    }

    private protected static string Words(HttpContent content) =>
        Encoding.UTF8.GetString(content.ReadAsByteArrayAsync(Token).GetAwaiter().GetResult());
}
