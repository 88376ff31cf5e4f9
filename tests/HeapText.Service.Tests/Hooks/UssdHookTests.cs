using System.Net;
using System.Text;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

public sealed class UssdHookTests : PracticeTests
{
    [Fact]
    public async Task Post_Step_ShowsTheScreen()
    {
        using var answer = await Service.Dial("a", 1, "");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("""{"text":"1: ","open":true}""", (await answer.Json()).GetRawText());
    }

    [Fact]
    public async Task Post_SameStepAgain_GetsTheSameBytesWithoutEffect()
    {
        var first = await Bytes("a", 1, "SMS");
        await Bytes("a", 2, "END");

        Assert.Equal(first, await Bytes("a", 1, "SMS"));
        Assert.Equal(first, await Bytes("a", 1, "another entry"));
        Assert.Equal("""{"text":"2: END","open":false}""", Encoding.UTF8.GetString(await Bytes("a", 2, "END")));
        Assert.Single(await Service.WaitForMessages(1));
        Assert.Equal(2, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Post_SameStepSideBySide_HasOneEffect()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => Bytes("a", 1, "SMS")));

        Assert.All(answers, answer => Assert.Equal(answers[0], answer));
        Assert.Equal(1, Service.Store.Commits);
        await Service.Text("1", "after");
        Assert.Equal(2, (await Service.WaitForMessages(2)).Count);
    }

    [Fact]
    public async Task Post_SameStepOfAnotherSessionOrPhone_IsAnotherStep()
    {
        await Bytes("a", 1, "");

        Assert.NotEqual(await Bytes("a", 1, ""), await Bytes("b", 1, ""));
        using var other = await Service.Dial("a", 1, "", "+99910000002");
        Assert.Equal("3: ", (await other.Json()).GetProperty("text").GetString());
    }

    [Fact]
    public async Task Post_SameStepAfterARestart_GetsTheSameBytes()
    {
        var first = await Bytes("a", 1, "SMS");

        await Restart(RunningService.Start.AddMinutes(30));

        Assert.Equal(first, await Bytes("a", 1, "SMS"));
        Assert.Equal(0, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Post_SameStepAfterItsAnswerWasKept_ShowsWhereTheFarmerIsWithoutEffect()
    {
        await Bytes("a", 1, "SMS");
        Service.Time.Advance(Screen.Kept.ToTimeSpan() + TimeSpan.FromSeconds(1));

        using var answer = await Service.Dial("a", 1, "SMS");

        Assert.Equal("2: SMS", (await answer.Json()).GetProperty("text").GetString());
        Assert.Equal(1, Service.Store.Commits);
        Assert.Single(await Service.WaitForMessages(1));
    }

    [Fact]
    public async Task Post_AnotherTurnCameBetween_IsTakenAgainFromTheStart()
    {
        Service.Store.Conflicts = 2;

        using var answer = await Service.Dial("a", 1, "");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("3: ", (await answer.Json()).GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("", "body: it is empty; send a JSON object with session, from, code, input and step.")]
    [InlineData("[]", "session, from, code, input and step")]
    [InlineData("{}", "session: it is missing")]
    [InlineData("{}", "from: it is missing")]
    [InlineData("{}", "code: it is missing")]
    [InlineData("{}", "input: it is missing")]
    [InlineData("{}", "step: it is not a whole number")]
    [InlineData("""{"session":"a","from":"+256700000001","code":"1","input":"","step":1}""", "from:")]
    [InlineData("""{"session":"a","from":"+99910000001","code":"1","input":"","step":"1"}""", "step:")]
    [InlineData("""{"session":"a","from":"+99910000001","code":"1","input":"","step":-1}""", "step:")]
    [InlineData("""{"session":"a","from":"+99910000001","code":"1","input":"","step":1.5}""", "step:")]
    [InlineData("""{"session":"a","from":"+99910000001","code":"1","input":5,"step":1}""", "input: it is not a string")]
    [InlineData("""{"session":"","from":"+99910000001","code":"1","input":"","step":1}""", "session: it is empty")]
    [InlineData("""{"session":"a","session":"b"}""", "session: it stands twice")]
    public async Task Post_BadBody_NamesTheFieldAndTheFix(string body, string expected)
    {
        using var answer = await Service.Post(body, "/ussd/practice");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(expected, await answer.Detail(), StringComparison.Ordinal);
        Assert.Equal(0, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Post_UnknownLine_NamesTheLinesThereAre()
    {
        using var answer = await Service.Post("{}", "/ussd/lake");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("practice", await answer.Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_StoreGone_IsAskedToComeAgainAndThenTaken()
    {
        Service.Store.IsGone = true;
        using var busy = await Service.Dial("a", 1, "");
        Service.Store.IsGone = false;
        using var taken = await Service.Dial("a", 1, "");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, busy.StatusCode);
        Assert.NotNull(busy.Headers.RetryAfter);
        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
    }

    [Fact]
    public async Task Post_StoreStalls_IsAskedToComeAgainWithinFiveSeconds()
    {
        Service.Store.IsStalled = true;

        var posting = Service.Dial("a", 1, "");
        await Service.Store.Stalled;
        Service.Time.Advance(TimeSpan.FromSeconds(5));

        using var answer = await posting;
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
    }

    [Fact]
    public async Task Post_StepThatFails_IsHandedToAPerson()
    {
        await Bytes("a", 1, "");

        using var failed = await Service.Dial("a", 2, "POISON");

        Assert.Equal(HttpStatusCode.InternalServerError, failed.StatusCode);
        Assert.Equal(ConcernReason.ServiceFault, (await Service.Store.Concerns(10, Token)).Single().Concern.Reason);
        Assert.DoesNotContain(Service.Logs.Lines, line => line.Contains("POISON", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Post_RealLine_TakesSignedStepsOnly()
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Real(folder.Path);
        const string body = """{"session":"a","from":"+256700000001","code":"*384#","input":"","step":1}""";
        const string forged = """{"session":"a","from":"+256700000001","code":"*384#","input":"1","step":1}""";

        using var plain = await service.Post(body, "/ussd/lake");
        using var changed = await service.Post(forged, "/ussd/lake", sign: Sign);
        using var signed = await service.Post(body, "/ussd/lake", sign: Sign);

        Assert.Equal(HttpStatusCode.Unauthorized, plain.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, changed.StatusCode);
        Assert.Equal(HttpStatusCode.OK, signed.StatusCode);
        Assert.Equal(1, service.Conversation.Heard);

        static void Sign(System.Net.Http.Headers.HttpRequestHeaders headers) =>
            RunningService.SignWith(RunningService.Secret, headers, body, RunningService.Start);
    }

    private async Task<byte[]> Bytes(string session, int step, string input)
    {
        using var answer = await Service.Dial(session, step, input);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync(Token);
    }
}
