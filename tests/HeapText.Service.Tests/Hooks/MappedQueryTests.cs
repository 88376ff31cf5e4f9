using System.Net;

namespace HeapText.Service.Tests.Hooks;

/// <summary>Fields in the query, screens marked by a header, the gateway known by its address.</summary>
public sealed class MappedQueryTests() : MappedTests("query-header-screens.json")
{
    [Fact]
    public async Task Screen_StaysOpenUntilTheHeaderSaysLeave()
    {
        using var first = await Dial("");
        using var second = await Dial("1");
        using var last = await Dial("1*END");

        Assert.Equal("1: ", Words(first.Content));
        Assert.Equal("wait", first.Headers.GetValues("X-Mesa-Next").Single());
        Assert.Equal("2: 1", Words(second.Content));
        Assert.Equal("3: END", Words(last.Content));
        Assert.Equal("leave", last.Headers.GetValues("X-Mesa-Next").Single());
        Assert.Equal("text/plain; charset=utf-8", last.Content.Headers.ContentType!.ToString());
    }

    [Fact]
    public async Task Screen_Again_IsTheSame()
    {
        using var first = await Dial("1*2");
        using var again = await Dial("1*2");
        using var next = await Dial("1*2*2");

        Assert.Equal("1: 2", Words(first.Content));
        Assert.Equal("1: 2", Words(again.Content));
        Assert.Equal("2: 2", Words(next.Content));
    }

    [Fact]
    public async Task Text_WithoutAnId_CountsBySenderTextAndTime()
    {
        using var first = await Get("/sms/mesa?phone=0722000001&said=HEAP&when=2026-03-02+09:00");
        using var again = await Get("/sms/mesa?phone=%2B254722000001&said=HEAP&when=2026-03-02+09:00");
        using var later = await Get("/sms/mesa?phone=0722000001&said=HEAP&when=2026-03-02+09:01");

        Assert.All([first, again, later], answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        Assert.Equal("", Words(first.Content));
        Assert.Equal(2, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Text_WithoutIdAndTime_IsToldWhatLacks()
    {
        using var answer = await Get("/sms/mesa?phone=0722000001&said=HEAP");

        Assert.Equal("Time: it is missing.", await answer.Detail());
    }

    [Fact]
    public async Task Text_Answered_IsSentInTheQuery()
    {
        GatewayAnswers("");

        using var answer = await Get("/sms/mesa?ref=1&phone=0722000001&said=a%26b%20%F0%9F%8C%BD");
        var sent = Assert.Single(await Sent(1));

        Assert.Equal("GET", sent.Method);
        Assert.Equal("0722000001", sent.Query!["phone"].Single());
        Assert.Equal("Heard: a&b 🌽", sent.Query["said"].Single());
        Assert.Equal("replace-this-mesa-key", sent.Query["gate"].Single());
        Assert.Equal("4042", sent.Headers!["X-Mesa-Voice"].Single());
    }

    [Fact]
    public async Task Receipt_OfASentMessage_IsAcknowledgedByName()
    {
        using var answer = await Get("/receipts/mesa?ours=s-1", ("X-Mesa-Fate", "there"));
        using var forged = await Get("/receipts/mesa?ours=s%0D%0AX-Bad:1", ("X-Mesa-Fate", "there"));

        Assert.Equal("thanks for s-1", Words(answer.Content));
        Assert.Equal("Message: it holds control characters; send it without them.", await forged.Detail());
    }

    [Fact]
    public async Task Call_Missed_IsTaken()
    {
        using var answer = await Get("/calls/mesa?ref=1&phone=0722000001");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(1, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Anything_InTheQuery_IsNotLogged()
    {
        GatewayAnswers("");

        using var text = await Get("/sms/mesa?ref=1&phone=0722000001&said=SECRETWORD");
        await Sent(1);
        using var screen = await Dial("SECRETWORD");

        foreach (var secret in new[] { "722000001", "SECRETWORD", "replace-this-mesa-key" })
            Assert.DoesNotContain(Service.Logs.Lines, line => line.Contains(secret, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Screen_ByAnotherMethod_IsRefused()
    {
        using var answer = await Post("/ussd/mesa", "", "text/plain", _ => { });

        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
        Assert.Equal("method: use GET at this address.", await answer.Detail());
    }

    private Task<HttpResponseMessage> Dial(string keys) =>
        Get($"/ussd/mesa?visit=v-1&phone=0722000001&keys={Uri.EscapeDataString(keys)}");
}
