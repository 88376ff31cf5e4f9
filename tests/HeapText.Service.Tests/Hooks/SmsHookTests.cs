using System.Net;
using HeapText.Dialog.Engine;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

public sealed class SmsHookTests : PracticeTests
{
    [Fact]
    public async Task Post_NewText_IsAcceptedAndAnswered()
    {
        using var answer = await Service.Text("1", "HEAP");

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal("""{"accepted":true,"duplicate":false}""", (await answer.Json()).GetRawText());
        Assert.Equal("Heard: HEAP", (await Service.WaitForMessages(1)).Single().GetProperty("text").GetString());
    }

    [Fact]
    public async Task Post_SameIdAgain_IsADuplicateWithoutEffect()
    {
        using var first = await Service.Text("1", "HEAP");
        await Service.WaitForMessages(1);
        using var second = await Service.Text("1", "HEAP");
        using var next = await Service.Text("2", "HEAP");

        Assert.True((await second.Json()).GetProperty("duplicate").GetBoolean());
        Assert.Equal(2, (await Service.WaitForMessages(2)).Count);
    }

    [Fact]
    public async Task Post_SameIdSideBySide_HasOneEffect()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => Service.Text("1", "HEAP")));

        var duplicates = await Task.WhenAll(answers.Select(async a =>
            (await a.Json()).GetProperty("duplicate").GetBoolean()));
        Assert.Single(duplicates, duplicate => !duplicate);
        await Service.Text("2", "after");
        Assert.Equal(2, (await Service.WaitForMessages(2)).Count);
    }

    [Fact]
    public async Task Post_SameIdFromAnotherPhone_IsAnotherMessage()
    {
        using var first = await Service.Text("1", "HEAP");
        using var other = await Service.Text("1", "HEAP", "+99910000002");

        Assert.False((await other.Json()).GetProperty("duplicate").GetBoolean());
    }

    [Theory]
    [InlineData("", "body")]
    [InlineData("  \n ", "body")]
    [InlineData("{", "line 1, byte 2")]
    [InlineData("{\"id\":\"1\",\n\"from\" \"x\"}", "line 2, byte 8")]
    [InlineData("[]", "body")]
    [InlineData("null", "body")]
    [InlineData("\"HEAP\"", "body")]
    [InlineData("""{"id":"1","\u0069d":"2"}""", "id: it stands twice")]
    [InlineData("""{"id":"1","text":"x","text":"y"}""", "text: it stands twice")]
    [InlineData("""{"id":"1","more":{"a":1,"a":2}}""", "body: a field stands twice")]
    [InlineData("""{"from":"+99910000001","to":"4040","text":"x"}""", "id: it is missing")]
    [InlineData("""{"id":null,"from":"+99910000001","to":"4040","text":"x"}""", "id: it is missing")]
    [InlineData("""{"id":7,"from":"+99910000001","to":"4040","text":"x"}""", "id: it is not a string")]
    [InlineData("""{"id":"","from":"+99910000001","to":"4040","text":"x"}""", "id: it is empty")]
    [InlineData("""{"id":"1","to":"4040","text":"x"}""", "from: it is missing")]
    [InlineData("""{"id":"1","from":{},"to":"4040","text":"x"}""", "from: it is not a string")]
    [InlineData("""{"id":"1","from":"farmer","to":"4040","text":"x"}""", "from: is not a practice number")]
    [InlineData("""{"id":"1","from":"+256700000001","to":"4040","text":"x"}""", "from: is not a practice number")]
    [InlineData("""{"id":"1","from":"+99910000001","text":"x"}""", "to: it is missing")]
    [InlineData("""{"id":"1","from":"+99910000001","to":"4040"}""", "text: it is missing")]
    [InlineData("""{"id":"1","from":"+99910000001","to":"4040","text":["x"]}""", "text: it is not a string")]
    [InlineData("""{"id":"1","from":"+99910000001","to":"4040","text":"\ud800"}""", "text: it holds half a character")]
    [InlineData("""{"id":"1","from":"+99910000001","to":"4040","text":"","sentAt":"noon"}""", "sentAt: it is not")]
    [InlineData("""{"id":"1","from":"+99910000001","to":"4040","text":"x","sentAt":12}""", "sentAt: it is not a time")]
    public async Task Post_BadBody_NamesTheFieldAndTheFix(string body, string expected)
    {
        using var answer = await Service.Post(body);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(expected, await answer.Detail(), StringComparison.Ordinal);
        Assert.Equal(0, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Post_SeveralFaults_NamesThemAll()
    {
        using var answer = await Service.Post("""{"id":1,"from":"x"}""");

        var detail = await answer.Detail();
        Assert.All(["id:", "from:", "to:", "text:"], field => Assert.Contains(field, detail, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Post_BytesThatAreNoUtf8_AreRefused()
    {
        using var body = new ByteArrayContent(
            [.. """{"id":"1","from":"+99910000001","to":"4040","text":"""u8, (byte)'"', 0xFF, (byte)'"', (byte)'}']);
        body.Headers.ContentType = new("application/json");
        using var answer = await Service.Http.PostAsync("/sms/practice", body, Token);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith("body: it is not UTF-8", await answer.Detail(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("application/json; charset=utf-8")]
    [InlineData("application/json; charset=\"UTF-8\"")]
    [InlineData("application/problem+json")]
    public async Task Post_JsonByAnotherSpelling_IsTaken(string type)
    {
        const string body = """{"id":"1","from":"+99910000001","to":"4040","text":"x"}""";

        using var answer = await Service.Post(body, type: type);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\\u0000\\u0007\\u202e <script>alert(1)</script> =1+1 🌱")]
    public async Task Post_OddText_IsTaken(string text)
    {
        using var answer = await Service.Post($$"""{"id":"1","from":"+99910000001","to":"4040","text":"{{text}}"}""");

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        await Service.WaitForMessages(1);
    }

    [Fact]
    public async Task Post_LongestBody_IsTakenAndOneByteMoreIsNot()
    {
        const string head = """{"id":"1","from":"+99910000001","to":"4040","text":" """;
        var longest = head + new string('x', (64 * 1024) - head.Length - 2) + "\"}";

        using var taken = await Service.Post(longest);
        using var refused = await Service.Post(longest + " ");

        Assert.Equal(HttpStatusCode.Accepted, taken.StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, refused.StatusCode);
        Assert.Contains("65536", await refused.Detail(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("")]
    public async Task Post_TypeNotSaid_IsReadAsJsonUnlessAPageSendsIt(string type)
    {
        const string body = """{"id":"1","from":"+99910000001","to":"4040","text":"x"}""";

        using var taken = await Service.Post(body, type: type);
        using var refused = await Service.Post(
            body, type: type, sign: headers => headers.Add("Origin", "http://elsewhere.example"));

        Assert.Equal(HttpStatusCode.Accepted, taken.StatusCode);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, refused.StatusCode);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/json; charset=latin1")]
    public async Task Post_OtherContentType_IsRefused(string type)
    {
        const string body = """{"id":"1","from":"+99910000001","to":"4040","text":"x"}""";

        using var answer = await Service.Post(body, type: type);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        Assert.Contains("Content-Type", await answer.Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_UnknownLine_NamesTheLinesThereAre()
    {
        using var answer = await Service.Post("{}", "/sms/lake");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("practice", await answer.Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_StoreGone_IsAskedToComeAgainAndThenTaken()
    {
        Service.Store.IsGone = true;
        using var busy = await Service.Text("1", "HEAP");
        Service.Store.IsGone = false;
        using var taken = await Service.Text("1", "HEAP");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, busy.StatusCode);
        Assert.NotNull(busy.Headers.RetryAfter);
        Assert.Contains("same id", await busy.Detail(), StringComparison.Ordinal);
        Assert.False((await taken.Json()).GetProperty("duplicate").GetBoolean());
    }

    [Fact]
    public async Task Post_StoreStalls_IsAskedToComeAgainWithinFiveSeconds()
    {
        Service.Store.IsStalled = true;

        var posting = Service.Text("1", "HEAP");
        await Service.Store.Stalled;
        Service.Time.Advance(TimeSpan.FromSeconds(5));

        using var answer = await posting;
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
    }

    [Fact]
    public async Task Post_TextThatAlwaysFails_IsHandedToAPersonAtTheFifthTry()
    {
        for (var i = 0; i < 4; i++)
        {
            using var failed = await Service.Text("1", "POISON");
            Assert.Equal(HttpStatusCode.InternalServerError, failed.StatusCode);
        }

        using var taken = await Service.Text("1", "POISON");

        Assert.Equal(HttpStatusCode.Accepted, taken.StatusCode);
        Assert.Equal(ConcernReason.ServiceFault, (await Service.Store.Concerns(10, Token)).Single().Concern.Reason);
    }

    [Fact]
    public async Task Post_TextThatAlwaysFails_LeavesTheFarmersRemindersAsTheyWere()
    {
        await Service.Text("1", "HEAP");
        for (var i = 0; i < 5; i++) await Service.Text("2", "POISON");

        await Service.Advance("P1D");

        var texts = (await Service.Messages()).Select(message => message.GetProperty("text").GetString());
        Assert.Equal(["Heard: HEAP", "Reminder"], texts);
    }
}
