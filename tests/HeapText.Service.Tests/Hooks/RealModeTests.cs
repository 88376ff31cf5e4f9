using System.Net;
using System.Text.Json;
using HeapText.Carriers.Signing;
using HeapText.Service.Tests.Fakes;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;

namespace HeapText.Service.Tests.Hooks;

public sealed class RealModeTests
{
    [Theory]
    [InlineData("GET", "/phone")]
    [InlineData("GET", "/phone/phone.js")]
    [InlineData("GET", "/practice/messages?to=%2B99910000001")]
    [InlineData("GET", "/practice/thread?number=%2B99910000001")]
    [InlineData("GET", "/practice/clock")]
    [InlineData("POST", "/practice/clock")]
    [InlineData("GET", "/practice/next")]
    [InlineData("GET", "/practice/concerns")]
    [InlineData("GET", "/practice/village")]
    [InlineData("POST", "/practice/fit")]
    [InlineData("POST", "/sms/practice")]
    public async Task PracticeRoute_InRealMode_DoesNotExist(string method, string path)
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Real(folder.Path);

        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var answer = await service.Http.SendAsync(request, Token);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        await answer.Detail();
    }

    [Fact]
    public async Task Text_OnARealLine_IsAnsweredThroughTheGateway()
    {
        using var gateway = WireMockServer.Start();
        gateway.Given(Request.Create().WithPath("/send").UsingPost())
            .RespondWith(Response.Create().WithStatusCode(202));
        using var folder = new TempFolder();
        await using var service = await RunningService.Real(folder.Path, $"http://127.0.0.1:{gateway.Port}/send");
        const string body = """{"id":"1","from":"256 700 000001","to":"4040","text":"HEAP"}""";

        using var answer = await service.Post(body, "/sms/lake",
            sign: headers => RunningService.SignWith(RunningService.Secret, headers, body, RunningService.Start));
        var sent = await FirstPost(gateway);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal(RunningService.RealNumber, sent.GetProperty("to").GetString());
        Assert.Equal("Heard: HEAP", sent.GetProperty("text").GetString());
        var headers = gateway.LogEntries.Single().RequestMessage!.Headers!;
        Assert.Equal(sent.GetProperty("id").GetString(), headers[WebhookSignature.IdHeader].Single());
        Assert.Equal(2, headers[WebhookSignature.SignatureHeader].Single().Split(' ').Length);
    }

    [Fact]
    public async Task Reminder_DueOnARealLine_IsSentByTheWorkersThemselves()
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Real(folder.Path);
        const string body = """{"id":"1","from":"+256700000001","to":"4040","text":"HEAP"}""";
        using var answer = await service.Post(body, "/sms/lake",
            sign: headers => RunningService.SignWith(RunningService.Secret, headers, body, RunningService.Start));
        service.Time.Advance(TimeSpan.FromDays(1));

        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while (service.Conversation.Woken == 0)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
            service.Time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal(1, service.Conversation.Woken);
    }

    private static async Task<JsonElement> FirstPost(WireMockServer gateway)
    {
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while (gateway.LogEntries.Count == 0)
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
        return JsonDocument.Parse(gateway.LogEntries[0].RequestMessage!.Body!).RootElement;
    }
}
