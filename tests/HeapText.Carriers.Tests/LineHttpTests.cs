using System.Net;
using System.Net.Sockets;
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

namespace HeapText.Carriers.Tests;

public sealed class LineHttpTests : IDisposable
{
    private const string Secret = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==";
    private const string Lake = "lake";
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 3, 2, 4, 0, 0, TimeSpan.Zero));
    private readonly WireMockServer _gateway = WireMockServer.Start();
    private ServiceProvider? _services;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _services?.Dispose();
        _gateway.Dispose();
    }

    [Fact]
    public async Task Send_NobodyListens_IsNotSentAndSafeToSendElsewhere()
    {
        Lines((Lake, FreePort()));

        Assert.Equal(new SendOutcome.Busy(null), await Advancing(Send()));
    }

    [Fact]
    public async Task Send_NobodyListensForAMoment_QuicklyTriesAgain()
    {
        var port = FreePort();
        Lines((Lake, port));

        var sending = Send().AsTask();
        await Task.Delay(TimeSpan.FromMilliseconds(200), TimeProvider.System, Cancel);
        using var late = WireMockServer.Start(port);
        late.Given(Request.Create()).RespondWith(Response.Create().WithStatusCode(202));

        Assert.IsType<SendOutcome.Taken>(await Advancing(sending));
        Assert.Single(late.LogEntries);
    }

    [Fact]
    public async Task Send_ConnectionResetAfterThePost_IsTriedOnceAndMayHaveBeenTaken()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var connections = 0;
        var resetting = Task.Run(
            async () =>
            {
                while (true)
                {
                    using var client = await listener.AcceptTcpClientAsync(Cancel);
                    Interlocked.Increment(ref connections);
                    await client.GetStream().ReadExactlyAsync(new byte[100], Cancel);
                    client.LingerState = new LingerOption(true, 0);
                }
            },
            Cancel);
        Lines((Lake, ((IPEndPoint)listener.LocalEndpoint).Port));

        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await Advancing(Send()));

        Assert.Equal(1, connections);
        Assert.False(resetting.IsCompleted);
    }

    [Theory]
    [InlineData(502)]
    [InlineData(503)]
    [InlineData(429)]
    [InlineData(500)]
    public async Task Send_AnsweredWithAFault_IsNotRepeatedAtOnce(int status)
    {
        Answer(status);
        Lines((Lake, _gateway.Port));

        await Advancing(Send());

        Assert.Single(_gateway.LogEntries);
    }

    [Fact]
    public async Task Send_GatewayFailsAgainAndAgain_IsLeftAloneAWhileByAllItsLines()
    {
        Answer(502);
        Lines((Lake, _gateway.Port), ("hill", _gateway.Port));
        for (var i = 0; i < 10; i++)
            Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await Send());

        Assert.Equal(new SendOutcome.Busy(null), await Send());
        Assert.Equal(new SendOutcome.Busy(null), await Send("hill"));
        Assert.Equal(10, _gateway.LogEntries.Count);

        _gateway.Reset();
        Answer(202);
        _time.Advance(TimeSpan.FromSeconds(16));
        Assert.IsType<SendOutcome.Taken>(await Send());
        Assert.IsType<SendOutcome.Taken>(await Send("hill"));
    }

    [Fact]
    public async Task Send_GatewayStillFailsAfterTheWhile_IsLeftAloneAgainAfterOnePost()
    {
        Answer(504);
        Lines((Lake, _gateway.Port));
        for (var i = 0; i < 10; i++) await Send();
        _time.Advance(TimeSpan.FromSeconds(16));

        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await Send());
        Assert.Equal(new SendOutcome.Busy(null), await Send());

        Assert.Equal(11, _gateway.LogEntries.Count);
    }

    [Fact]
    public async Task Send_OneGatewayLeftAlone_OthersAreNot()
    {
        using var other = WireMockServer.Start();
        other.Given(Request.Create()).RespondWith(Response.Create().WithStatusCode(202));
        Answer(502);
        Lines((Lake, _gateway.Port), ("hill", other.Port));
        for (var i = 0; i < 12; i++) await Send();

        Assert.IsType<SendOutcome.Taken>(await Send("hill"));
    }

    [Fact]
    public async Task Send_GatewaySaysItIsBusyAgainAndAgain_IsAskedEachTime()
    {
        _gateway.Given(Request.Create())
            .RespondWith(Response.Create().WithStatusCode(503).WithHeader("Retry-After", "7"));
        Lines((Lake, _gateway.Port));

        for (var i = 0; i < 20; i++)
            Assert.Equal(new SendOutcome.Busy(Duration.FromSeconds(7)), await Send());
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private void Answer(int status) =>
        _gateway.Given(Request.Create()).RespondWith(Response.Create().WithStatusCode(status));

    private void Lines(params (string Name, int Port)[] lines)
    {
        Assert.True(WebhookKey.TryParse(Secret, out var key));
        _services = new ServiceCollection().AddSingleton<TimeProvider>(_time)
            .AddNativeLines(lines.Select(line => new NativeLineOptions
            {
                Name = line.Name,
                Url = new Uri($"http://127.0.0.1:{line.Port}/send"),
                Keys = [key],
                From = "4040",
            }))
            .BuildServiceProvider();
    }

    private ValueTask<SendOutcome> Send(string line = Lake)
    {
        Assert.True(Msisdn.TryParse("+256700000001", out var to));
        var now = _time.GetUtcNow().ToInstant();
        return _services!.GetServices<ICarrier>().Single(carrier => carrier.Line == line).Send(
            new Outbound("s-1", line, "Karibu", Priority.Reply, now, now + Duration.FromDays(1)), to, Cancel);
    }

    /// <summary>Lets the clock go on while a send waits, by less than its deadline.</summary>
    private async Task<SendOutcome> Advancing(ValueTask<SendOutcome> sending) => await Advancing(sending.AsTask());

    private async Task<SendOutcome> Advancing(Task<SendOutcome> sending)
    {
        for (var i = 0; i < 18 && !sending.IsCompleted; i++)
        {
            await Task.WhenAny(sending, Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, Cancel));
            if (!sending.IsCompleted) _time.Advance(TimeSpan.FromMilliseconds(500));
        }
        return await sending.WaitAsync(TimeSpan.FromSeconds(10), Cancel);
    }
}
