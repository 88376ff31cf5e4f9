using System.Globalization;
using System.Text;
using System.Text.Json;
using HeapText.Carriers.Native;
using HeapText.Carriers.Signing;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace HeapText.Carriers.Tests.Native;

public sealed class NativeLineTests : IDisposable
{
    private const string Secret = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==";
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 4, 0, 0, TimeSpan.Zero);
    private readonly WireMockServer _gateway = WireMockServer.Start();
    private readonly FakeTimeProvider _time = new(Now);
    private ServiceProvider? _services;

    [Fact]
    public async Task Send_GatewayTakesIt_PostsTheNativeForm()
    {
        Answer(Response.Create().WithStatusCode(202));

        var outcome = await Send(Message("Geuza lundo lako leo."));

        Assert.IsType<SendOutcome.Taken>(outcome);
        var posted = JsonDocument.Parse(_gateway.LogEntries.Single().RequestMessage!.Body!).RootElement;
        Assert.Equal(
            ["id s-1", "from 4040", "to +256700000001", "text Geuza lundo lako leo.", "encoding GSM7", "segments 1",
                "expiresAt 2026-03-03T04:00:00Z"],
            posted.EnumerateObject().Select(field => $"{field.Name} {field.Value}"));
        Assert.Equal(JsonValueKind.Number, posted.GetProperty("segments").ValueKind);
    }

    [Fact]
    public async Task Send_TextBeyondTheSmallAlphabet_SaysSo()
    {
        Answer(Response.Create().WithStatusCode(200));

        await Send(Message(new string('ጤ', 71)));

        var posted = JsonDocument.Parse(_gateway.LogEntries.Single().RequestMessage!.Body!).RootElement;
        Assert.Equal("UCS2", posted.GetProperty("encoding").GetString());
        Assert.Equal(2, posted.GetProperty("segments").GetInt32());
    }

    [Fact]
    public async Task Send_Always_SignsWhatItPosts()
    {
        Answer(Response.Create().WithStatusCode(200));

        await Send(Message("Karibu"));

        var posted = _gateway.LogEntries.Single().RequestMessage!;
        Assert.True(WebhookSignature.IsGenuine(
            [Key()], posted.Headers![WebhookSignature.IdHeader].Single(),
            posted.Headers[WebhookSignature.TimestampHeader].Single(),
            posted.Headers[WebhookSignature.SignatureHeader].Single(),
            Encoding.UTF8.GetBytes(posted.Body!), Now.ToInstant()));
        Assert.Equal("s-1", posted.Headers[WebhookSignature.IdHeader].Single());
    }

    [Theory]
    [InlineData(429)]
    [InlineData(503)]
    public async Task Send_GatewayBusy_WaitsAsLongAsItAsks(int status)
    {
        Answer(Response.Create().WithStatusCode(status).WithHeader("Retry-After", "120"));

        var outcome = await Send(Message("Karibu"));

        Assert.Equal(new SendOutcome.Busy(Duration.FromSeconds(120)), outcome);
    }

    [Fact]
    public async Task Send_GatewayBusyUntilADate_WaitsUntilThen()
    {
        var until = Now.AddMinutes(3).ToString("R", CultureInfo.InvariantCulture);
        Answer(Response.Create().WithStatusCode(503).WithHeader("Retry-After", until));

        var outcome = await Send(Message("Karibu"));

        Assert.Equal(new SendOutcome.Busy(Duration.FromMinutes(3)), outcome);
    }

    [Fact]
    public async Task Send_GatewayBusyWithoutSayingHowLong_LeavesThatToUs()
    {
        Answer(Response.Create().WithStatusCode(429));

        Assert.Equal(new SendOutcome.Busy(null), await Send(Message("Karibu")));
    }

    [Theory]
    [InlineData(400)]
    [InlineData(401)]
    [InlineData(404)]
    [InlineData(422)]
    public async Task Send_GatewayRefuses_IsFinal(int status)
    {
        Answer(Response.Create().WithStatusCode(status));

        var refused = Assert.IsType<SendOutcome.Refused>(await Send(Message("Karibu")));

        Assert.Contains(status.ToString(CultureInfo.InvariantCulture), refused.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(502)]
    [InlineData(504)]
    public async Task Send_NoGatewayBehindTheProxy_LeavesTheLineAlone(int status)
    {
        Answer(Response.Create().WithStatusCode(status));

        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await Send(Message("Karibu")));
    }

    [Theory]
    [InlineData(500)]
    [InlineData(501)]
    [InlineData(302)]
    public async Task Send_GatewayFails_IsTriedAgain(int status)
    {
        Answer(Response.Create().WithStatusCode(status).WithHeader("Location", _gateway.Url + "/elsewhere"));

        Assert.Equal(new SendOutcome.TryAgain(null), await Send(Message("Karibu")));
        Assert.Single(_gateway.LogEntries);
    }

    [Fact]
    public async Task Send_NoAnswerInTime_IsTriedAgain()
    {
        Answer(Response.Create().WithStatusCode(200).WithDelay(TimeSpan.FromSeconds(30)));

        var sending = Send(Message("Karibu")).AsTask();
        while (!_gateway.LogEntries.Any() && !sending.IsCompleted)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await sending);
    }

    public void Dispose()
    {
        _services?.Dispose();
        _gateway.Dispose();
    }

    private void Answer(IResponseBuilder answer) =>
        _gateway.Given(Request.Create().WithPath("/send").UsingPost()).RespondWith(answer);

    private ValueTask<SendOutcome> Send(Outbound message)
    {
        var options = new NativeLineOptions
        {
            Name = "lake",
            Url = new Uri($"http://127.0.0.1:{_gateway.Port}/send"),
            Keys = [Key()],
            From = "4040",
        };
        _services = new ServiceCollection()
            .AddSingleton<TimeProvider>(_time).AddNativeLines([options]).BuildServiceProvider();
        Assert.True(Msisdn.TryParse("+256700000001", out var to));
        return _services.GetRequiredService<ICarrier>().Send(message, to, TestContext.Current.CancellationToken);
    }

    private static Outbound Message(string text)
    {
        var now = Now.ToInstant();
        return new Outbound("s-1", "lake", text, Priority.Reply, now, now + Duration.FromDays(1));
    }

    private static WebhookKey Key() =>
        WebhookKey.TryParse(Secret, out var key) ? key : throw new InvalidOperationException();
}
