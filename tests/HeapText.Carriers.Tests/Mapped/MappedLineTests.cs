using System.Globalization;
using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace HeapText.Carriers.Tests.Mapped;

public sealed class MappedLineTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 4, 0, 0, TimeSpan.Zero);
    private static readonly AnswerRules Words = new()
    {
        Result = Field.Parse("Result", "json:/state | body:", out _),
        Results = [("kept*", Verdict.Taken), ("full", Verdict.Busy), ("unknown", Verdict.Refused),
            ("again", Verdict.Retry)],
        Reference = Field.Parse("Reference", "json:/refs", out _),
    };

    private readonly WireMockServer _gateway = WireMockServer.Start();
    private readonly FakeTimeProvider _time = new(Now);
    private ServiceProvider? _services;

    [Fact]
    public async Task Send_EveryPlaceholder_IsFilled()
    {
        Answer(Response.Create().WithStatusCode(200));
        var body = string.Join('\n', Placeholders.Sending.Select(name => $"{name}: {{{name}}}"));

        await Send(Post(body, "text/plain"), "Geuza lundo");

        Assert.Equal(
            ["id: s-1", "from: 4040", "to: +256700000001", "to-digits: 256700000001", "to-national: 0700000001",
                "text: Geuza lundo", "encoding: GSM7", "segments: 1", "expires: 2026-03-02T04:01:30Z",
                "expires-unix: 1772424090", "validity-seconds: 90", "validity-minutes: 2"],
            _gateway.LogEntries.Single().RequestMessage!.Body!.Split('\n'));
    }

    [Theory]
    [InlineData("Karibu", "plain")]
    [InlineData("ጤና", "wide")]
    public async Task Send_EncodingsOfTheGateway_StandInTheRequest(string text, string expected)
    {
        Answer(Response.Create().WithStatusCode(200));
        var encodings = new Dictionary<string, string> { ["GSM7"] = "plain", ["UCS2"] = "wide" };

        await Send(Post("{encoding}", "text/plain") with { Encodings = encodings }, text);

        Assert.Equal(expected, _gateway.LogEntries.Single().RequestMessage!.Body);
    }

    [Fact]
    public async Task Send_TextInTheQuery_StaysInItsField()
    {
        _gateway.Given(Request.Create().UsingGet()).RespondWith(Response.Create().WithStatusCode(200));
        const string text = "a&to=1 #?/+%\r\n🌽\"<";
        var send = Post("", "text/plain") with
        {
            Method = HttpMethod.Get,
            Url = Template.Parse($"http://127.0.0.1:{_gateway.Port}/say/{{to-digits}}?said={{text}}&more=1"),
            Body = null,
            ContentType = null,
            Auth = new LineAuth.QueryKey("gate", [new LineSecret("s&cret")]),
        };

        Assert.IsType<SendOutcome.Taken>(await Send(send, text));

        var sent = _gateway.LogEntries.Single().RequestMessage!;
        Assert.Equal(text, sent.Query!["said"].Single());
        Assert.Equal("1", sent.Query["more"].Single());
        Assert.Equal("s&cret", sent.Query["gate"].Single());
        Assert.Equal("/say/256700000001", sent.Path);
        Assert.Equal(3, sent.Query.Count);
    }

    [Theory]
    [InlineData(200, "Taken { References =  }")]
    [InlineData(299, "Taken { References =  }")]
    [InlineData(429, "Busy { After = 0:00:02:00 }")]
    [InlineData(503, "Busy { After = 0:00:02:00 }")]
    [InlineData(400, "Refused { Reason = The gateway refused it with 400. }")]
    [InlineData(404, "Refused { Reason = The gateway refused it with 404. }")]
    [InlineData(500, "TryAgain { After = 0:00:02:00, LineBusy = False }")]
    [InlineData(302, "TryAgain { After = 0:00:02:00, LineBusy = False }")]
    [InlineData(502, "TryAgain { After = 0:00:02:00, LineBusy = True }")]
    [InlineData(504, "TryAgain { After = 0:00:02:00, LineBusy = True }")]
    public async Task Send_StatusAlone_MeansTheUsual(int status, string expected)
    {
        Answer(Response.Create().WithStatusCode(status).WithHeader("Retry-After", "120")
            .WithHeader("Location", _gateway.Url + "/elsewhere"));

        Assert.Equal(expected, (await Send(Post())).ToString());
        Assert.Single(_gateway.LogEntries);
    }

    [Theory]
    [InlineData(200, typeof(SendOutcome.Taken))]
    [InlineData(208, typeof(SendOutcome.Refused))]
    [InlineData(409, typeof(SendOutcome.TryAgain))]
    [InlineData(420, typeof(SendOutcome.Busy))]
    [InlineData(500, typeof(SendOutcome.Taken))]
    public async Task Send_StatusOfTheMapping_MeansWhatItSays(int status, Type expected)
    {
        Answer(Response.Create().WithStatusCode(status));
        var rules = new AnswerRules
        {
            Statuses = [(208, 208, Verdict.Refused), (409, 409, Verdict.Retry), (420, 429, Verdict.Busy),
                (500, 500, Verdict.Taken)],
        };

        Assert.IsType(expected, await Send(Post() with { Answers = rules }));
    }

    [Theory]
    [InlineData(200, "{\"state\":\"kept well\"}", typeof(SendOutcome.Taken))]
    [InlineData(200, "{\"state\":\"KEPT\"}", typeof(SendOutcome.Taken))]
    [InlineData(500, "{\"state\":\"kept\"}", typeof(SendOutcome.Taken))]
    [InlineData(200, "{\"state\":\"full\"}", typeof(SendOutcome.Busy))]
    [InlineData(200, "{\"state\":\"unknown\"}", typeof(SendOutcome.Refused))]
    [InlineData(200, "{\"state\":\"unknown number\"}", typeof(SendOutcome.TryAgain))]
    [InlineData(200, "{\"state\":\"again\"}", typeof(SendOutcome.TryAgain))]
    [InlineData(200, "{\"state\":[]}", typeof(SendOutcome.TryAgain))]
    [InlineData(200, "", typeof(SendOutcome.TryAgain))]
    [InlineData(200, "<html>", typeof(SendOutcome.TryAgain))]
    [InlineData(400, "{}", typeof(SendOutcome.Refused))]
    [InlineData(503, "{}", typeof(SendOutcome.Busy))]
    public async Task Send_WordOfTheGateway_GoesBeforeTheStatus(int status, string body, Type expected)
    {
        Answer(Response.Create().WithStatusCode(status).WithBody(body));

        Assert.IsType(expected, await Send(Post() with { Answers = Words }));
    }

    [Theory]
    [InlineData("json:/id", "{\"id\":17}", "17")]
    [InlineData("json:/ids", "{\"ids\":[\"a\",\"b\"]}", "a b")]
    [InlineData("xml:/bag/part/@number", "<bag><part number='1'/><part number='2'/></bag>", "1 2")]
    [InlineData("form:id", "id=a%20b", "a b")]
    [InlineData("header:X-Reference", "", "from-header")]
    [InlineData("body:kept *", "kept 99\n", "99")]
    public async Task Send_ReferenceInItsPlace_IsGivenBack(string place, string body, string expected)
    {
        Answer(Response.Create().WithStatusCode(200).WithHeader("X-Reference", "from-header").WithBody(body));
        var rules = new AnswerRules { Reference = Field.Parse("Reference", place, out _) };

        var taken = Assert.IsType<SendOutcome.Taken>(await Send(Post() with { Answers = rules }));

        Assert.Equal(expected, string.Join(' ', taken.References!));
    }

    [Fact]
    public async Task Send_AnswerBeyondTheLimit_TellsByItsStatusAlone()
    {
        Answer(Response.Create().WithStatusCode(200)
            .WithBody($"{{\"refs\":\"{new string('x', MappedLine.MostAnswerBytes)}\"}}"));
        var rules = new AnswerRules { Reference = Words.Reference };

        Assert.Null(Assert.IsType<SendOutcome.Taken>(await Send(Post() with { Answers = rules })).References);
        Assert.IsType<SendOutcome.TryAgain>(await Send(Post() with { Answers = Words }));
    }

    [Fact]
    public async Task Send_NoAnswerInTime_IsTriedAgainUnderTheSameId()
    {
        Answer(Response.Create().WithStatusCode(200).WithDelay(TimeSpan.FromSeconds(30)));

        var sending = Send(Post("{id}", "text/plain")).AsTask();
        while (!_gateway.LogEntries.Any() && !sending.IsCompleted)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await sending);
    }

    [Fact]
    public async Task Send_NobodyAnswersThere_LeavesTheLineAlone()
    {
        _gateway.Stop();

        var sending = Send(Post()).AsTask();
        while (!sending.IsCompleted)
        {
            _time.Advance(TimeSpan.FromMilliseconds(20));
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System, TestContext.Current.CancellationToken);
        }

        Assert.Equal(new SendOutcome.Busy(null), await sending);
    }

    [Fact]
    public async Task Send_Twice_SendsTheSameRequest()
    {
        Answer(Response.Create().WithStatusCode(500));

        await Send(Post("{id} {text} {expires}", "text/plain"));
        await Send(Post("{id} {text} {expires}", "text/plain"));

        Assert.Single(_gateway.LogEntries.Select(entry => entry.RequestMessage!.Body).Distinct());
    }

    [Fact]
    public async Task Send_EachProof_StandsWhereItBelongs()
    {
        Answer(Response.Create().WithStatusCode(200));
        LineSecret[] secret = [new("s")];

        await Send(Post() with { Auth = new LineAuth.Basic("u", secret) });
        await Send(Post() with { Auth = new LineAuth.Bearer(secret) });
        await Send(Post() with { Auth = new LineAuth.HeaderKey("X-Key", secret) });

        string Header(int i, string name) => _gateway.LogEntries[i].RequestMessage!.Headers![name].Single();
        Assert.Equal("Basic dTpz", Header(0, "Authorization"));
        Assert.Equal("Bearer s", Header(1, "Authorization"));
        Assert.Equal("s", Header(2, "X-Key"));
    }

    [Fact]
    public async Task Send_Hash_IsOneThatOurOwnCheckTakes()
    {
        Answer(Response.Create().WithStatusCode(200));
        var scheme = new HmacScheme
        {
            Keys = [new byte[32]],
            IsLong = true,
            IsBase64 = true,
            Prefix = "v1=",
            Over = Template.Parse("{method} {path} {query} {timestamp} {header:X-Extra} {body}"),
            Header = "X-Seal",
            TimestampHeader = "X-Time",
        };

        await Send(Post("words={text}", "application/x-www-form-urlencoded") with
        {
            Headers = [KeyValuePair.Create("X-Extra", Template.Parse("{to}"))],
            Auth = new LineAuth.Hmac(scheme),
        }, "é & 🌽");

        var sent = _gateway.LogEntries.Single().RequestMessage!;
        var headers = new Microsoft.AspNetCore.Http.HeaderDictionary();
        foreach (var (name, values) in sent.Headers!) headers[name] = values.ToArray();
        var request = new HookRequest("POST", "/send", "a=1", headers, sent.BodyAsBytes);
        Assert.True(AuthCheck.IsGenuine(new LineAuth.Hmac(scheme), request, Now.ToInstant()));
        Assert.False(AuthCheck.IsGenuine(new LineAuth.Hmac(scheme), request with { Query = "a=2" }, Now.ToInstant()));
    }

    [Fact]
    public async Task Send_BusyUntilADate_WaitsUntilThen()
    {
        var until = Now.AddMinutes(3).ToString("R", CultureInfo.InvariantCulture);
        Answer(Response.Create().WithStatusCode(503).WithHeader("Retry-After", until));

        Assert.Equal(new SendOutcome.Busy(Duration.FromMinutes(3)), await Send(Post()));
    }

    public void Dispose()
    {
        _services?.Dispose();
        _gateway.Dispose();
    }

    private void Answer(IResponseBuilder answer) =>
        _gateway.Given(Request.Create().WithPath("/send").UsingPost()).RespondWith(answer);

    private SendMapping Post(string body = "{\"text\":\"{text}\"}", string type = "application/json") => new()
    {
        Method = HttpMethod.Post,
        Url = Template.Parse($"http://127.0.0.1:{_gateway.Port}/send?a=1"),
        Body = Template.Parse(body),
        ContentType = type,
        Format = TextFormats.Of(type)!.Value,
        Auth = new LineAuth.None(),
        Answers = new AnswerRules(),
    };

    private ValueTask<SendOutcome> Send(SendMapping send, string text = "Karibu")
    {
        var options = new MappedLineOptions { Name = "lake", From = "4040", Auth = new LineAuth.None(), Send = send };
        _services?.Dispose();
        _services = new ServiceCollection()
            .AddSingleton<TimeProvider>(_time).AddMappedLines([options]).BuildServiceProvider();
        Assert.True(Msisdn.TryParse("+256700000001", out var to));
        var now = Now.ToInstant();
        var message = new Outbound("s-1", "lake", text, Priority.Reply, now, now + Duration.FromSeconds(90));
        return _services.GetRequiredService<ICarrier>().Send(message, to, TestContext.Current.CancellationToken);
    }
}
