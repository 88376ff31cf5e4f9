using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Practice;

public sealed class PracticeRoutesTests : PracticeTests
{
    [Fact]
    public async Task Messages_SentToANumber_ShowWhatThePhoneGot()
    {
        await Service.Text("1", "HEAP");

        var message = (await Service.WaitForMessages(1)).Single();

        Assert.Equal(
            ["n", "id", "to", "text", "encoding", "segments", "at"],
            message.EnumerateObject().Select(field => field.Name));
        Assert.Equal(RunningService.Number, message.GetProperty("to").GetString());
        Assert.Equal("GSM7", message.GetProperty("encoding").GetString());
        Assert.Equal(1, message.GetProperty("segments").GetInt32());
        Assert.Equal(RunningService.Start, message.GetProperty("at").GetDateTimeOffset());
    }

    [Fact]
    public async Task Messages_AfterTheLastSeen_ShowOnlyWhatIsNew()
    {
        await Service.Text("1", "TWICE");
        var both = await Service.WaitForMessages(2);

        var news = await Service.Messages(after: both[0].GetProperty("n").GetInt64());

        Assert.Equal(["first", "second"], both.Select(message => message.GetProperty("text").GetString()));
        Assert.Equal("second", news.Single().GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("", "to:")]
    [InlineData("?to=", "to:")]
    [InlineData("?to=farmer", "to:")]
    [InlineData("?to=%2B256700000001", "to:")]
    [InlineData("?to=%2B99910000001&after=x", "after:")]
    [InlineData("?to=%2B99910000001&after=-1", "after:")]
    public async Task Messages_BadQuery_NamesTheField(string query, string field)
    {
        using var answer = await Service.Http.GetAsync("/practice/messages" + query, Token);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Json();
        Assert.StartsWith(field, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("The request cannot be read", problem.GetProperty("title").GetString());
    }

    [Fact]
    public async Task Clock_MovedPastAReminder_SendsItAtItsOwnTime()
    {
        await Service.Text("1", "HEAP");

        var now = await Service.Advance("P3DT2H");

        Assert.Equal(RunningService.Start.AddDays(3).AddHours(2), now);
        var reminder = (await Service.Messages()).Single(m => m.GetProperty("text").GetString() == "Reminder");
        Assert.Equal(new DateTimeOffset(2026, 3, 3, 4, 0, 0, TimeSpan.Zero),
            reminder.GetProperty("at").GetDateTimeOffset());
    }

    [Fact]
    public async Task Clock_ManyPhonesDue_SendsToEachOnce()
    {
        await Task.WhenAll(Enumerable.Range(10, 60).Select(i => Service.Text("1", "HEAP", $"+999100000{i}")));

        await Service.Advance("P1D");

        var all = await Task.WhenAll(Enumerable.Range(10, 60).Select(i => Service.Messages($"+999100000{i}")));
        Assert.All(all, messages => Assert.Equal(2, messages.Count));
    }

    [Theory]
    [InlineData("PT1S", 1)]
    [InlineData("PT36H", 129_600)]
    [InlineData("P1W", 604_800)]
    [InlineData("P400D", 34_560_000)]
    [InlineData("PT0.5S", 0.5)]
    public async Task Clock_GoodDuration_MovesByIt(string duration, double seconds)
    {
        Assert.Equal(RunningService.Start.AddSeconds(seconds), await Service.Advance(duration));
    }

    [Theory]
    [InlineData("""{"advance":"P0D"}""")]
    [InlineData("""{"advance":"-P1D"}""")]
    [InlineData("""{"advance":"P-1D"}""")]
    [InlineData("""{"advance":"P400DT1S"}""")]
    [InlineData("""{"advance":"P99999999999999999D"}""")]
    [InlineData("""{"advance":"P9999999999W"}""")]
    [InlineData("""{"advance":"PT9223372036854775807S"}""")]
    [InlineData("""{"advance":"P1M"}""")]
    [InlineData("""{"advance":"P1Y"}""")]
    [InlineData("""{"advance":"1 day"}""")]
    [InlineData("""{"advance":""}""")]
    [InlineData("""{"advance":"P"}""")]
    [InlineData("""{"advance":86400}""")]
    [InlineData("""{"advance":null}""")]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("")]
    [InlineData("{")]
    public async Task Clock_BadDuration_IsRefusedNamingTheField(string body)
    {
        using var answer = await Service.Post(body, "/practice/clock");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith("advance:", await answer.Detail(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/practice/clock", """{"advance":"P1D"}""", "text/plain")]
    [InlineData("/practice/fit", """{"text":"HEAP"}""", "text/xml")]
    public async Task Post_OtherContentType_IsRefused(string path, string body, string type)
    {
        using var answer = await Service.Post(body, path, type);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        Assert.Contains("application/json", await answer.Detail(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET", "/practice/next")]
    [InlineData("GET", "/practice/village")]
    [InlineData("GET", "/practice/concerns")]
    [InlineData("POST", "/practice/clock")]
    public async Task Route_StoreGone_AsksToComeAgain(string method, string path)
    {
        Service.Store.IsGone = true;
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (method == "POST") request.Content = JsonContent.Create(new { advance = "P1D" });
        using var answer = await Service.Http.SendAsync(request, Token);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.NotNull(answer.Headers.RetryAfter);
        Assert.DoesNotContain("id", (await answer.Detail()).Split(' '));
    }

    [Fact]
    public async Task Clock_AfterARestart_StandsWhereItStood()
    {
        await Service.Advance("P10D");

        await Restart(RunningService.Start.AddMinutes(5));
        var clock = await Service.Http.GetFromJsonAsync<JsonElement>("/practice/clock", Token);

        Assert.Equal(RunningService.Start.AddDays(10).AddMinutes(5), clock.GetProperty("now").GetDateTimeOffset());
    }

    [Fact]
    public async Task Next_SomethingWaits_TellsWhen()
    {
        await Service.Text("1", "HEAP");
        await Service.WaitForMessages(1);

        var next = await Service.Http.GetFromJsonAsync<JsonElement>("/practice/next", Token);

        Assert.Equal("2026-03-03T04:00:00Z", next.GetProperty("at").GetString());
    }

    [Fact]
    public async Task Concerns_FarmerAsksForTheTrainer_ShowsTheNumberMasked()
    {
        await Service.Text("1", "HELP");

        var concerns = await Service.Http.GetFromJsonAsync<List<JsonElement>>("/practice/concerns", Token);

        Assert.Equal("+999******01", concerns!.Single().GetProperty("number").GetString());
        Assert.Equal("person", concerns!.Single().GetProperty("reason").GetString());
    }

    [Theory]
    [InlineData("""{"text":"HEAP"}""", """{"encoding":"GSM7","units":4,"segments":1,"most":160}""")]
    [InlineData("""{"text":"ጤና"}""", """{"encoding":"UCS2","units":2,"segments":1,"most":70}""")]
    public async Task Fit_AText_TellsWhatItTakes(string body, string expected)
    {
        using var answer = await Service.Post(body, "/practice/fit");

        Assert.Equal(expected, (await answer.Json()).GetRawText());
    }

    [Fact]
    public async Task Host_NameOfAnotherSite_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/practice/clock");
        request.Headers.Host = "elsewhere.example";
        using var answer = await Service.Http.SendAsync(request, Token);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Host_AnotherAddressOfThisMachine_IsServed()
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Practice(folder.Path, url: "http://127.0.0.2:0");

        using var answer = await service.Http.GetAsync("/practice/clock", Token);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("/phone", "text/html")]
    [InlineData("/phone/phone.css", "text/css")]
    [InlineData("/phone/phone.js", "text/javascript")]
    public async Task Phone_ItsFiles_AreServedUnderAStrictPolicy(string path, string type)
    {
        using var answer = await Service.Http.GetAsync(path, Token);

        Assert.Equal(type, answer.Content.Headers.ContentType?.MediaType);
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Logs_OfAWholeDay_HoldNoTextAndNoNumber()
    {
        await Service.Text("1", "HELP secret words");
        await Service.Text("2", "POISON DUE");
        await Service.Text("3", "POISON");
        await Service.Advance("P2D");
        using var bad = await Service.Post("""{"id":"1","from":"+99910000001","to":1,"text":"secret words"}""");

        Assert.Contains(Service.Logs.Lines, line => line.Contains("+999******01", StringComparison.Ordinal));
        Assert.All(["secret words", "POISON", "99910000001"], secret => Assert.DoesNotContain(
            Service.Logs.Lines, line => line.Contains(secret, StringComparison.Ordinal)));
    }
}
