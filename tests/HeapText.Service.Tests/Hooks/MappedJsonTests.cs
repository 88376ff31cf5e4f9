using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

/// <summary>JSON both ways, several messages in a request, replies pushed.</summary>
public sealed class MappedJsonTests() : MappedTests("json-both-ways.json")
{
    private const string Two = """
        {"letters":[{"tag":"l-1","writer":{"phone":"+256700000001"},"page":"HEAP"},
        {"tag":"l-2","writer":{"phone":"256 700 000002"},"page":"say \"<hot>\" \\ & 🌽"}]}
        """;

    [Fact]
    public async Task Texts_InOneRequest_AreEachAnsweredByAPush()
    {
        GatewayAnswers("""{"letters":[{"tags":["r-1","r-2"]}]}""");

        using var answer = await Send("/sms/reed", Two);
        var sent = await Sent(2);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("""{"taken":2}""", Words(answer.Content));
        var letters = sent.Select(one => JsonDocument.Parse(one.Body!).RootElement.GetProperty("letters")[0])
            .ToDictionary(letter => letter.GetProperty("reader").GetString()!);
        Assert.Equal("Heard: HEAP", letters["+256700000001"].GetProperty("page").GetString());
        Assert.Equal("Heard: say \"<hot>\" \\ & 🌽", letters["+256700000002"].GetProperty("page").GetString());
        var stop = letters["+256700000001"].GetProperty("stop").GetInt64();
        Assert.Equal(RunningService.Start.AddDays(2).ToUnixTimeSeconds(), stop);
        Assert.All(sent, one => Assert.Equal("Bearer replace-this-reed-token", one.Headers!["Authorization"].Single()));
    }

    [Fact]
    public async Task Texts_Again_HaveOneEffect()
    {
        using var first = await Send("/sms/reed", Two);
        using var second = await Send("/sms/reed", Two);

        Assert.Equal("""{"taken":2}""", Words(second.Content));
        Assert.Equal(2, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Texts_OneThatCannotBeRead_DoesNotHoldBackTheOthers()
    {
        var body = Two.Replace("256 700 000002", "SPECIAL OFFER", StringComparison.Ordinal);

        using var answer = await Send("/sms/reed", body);

        Assert.Equal("""{"taken":1}""", Words(answer.Content));
        Assert.Equal(1, Service.Conversation.Heard);
        var warning = Assert.Single(Service.Logs.Lines, line => line.Contains("left out", StringComparison.Ordinal));
        Assert.Contains("message 2: From: is not a telephone number", warning, StringComparison.Ordinal);
        Assert.DoesNotContain("OFFER", warning, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Texts_NoneThatCanBeRead_IsToldWhy()
    {
        using var answer = await Send("/sms/reed", """{"letters":[{"tag":"l-1"}]}""");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("message 1: From: it is missing. message 1: Text: it is missing.", await answer.Detail());
    }

    [Fact]
    public async Task Texts_StoreGone_AreNotPromised()
    {
        Service.Store.IsGone = true;

        using var answer = await Send("/sms/reed", Two);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
    }

    [Fact]
    public async Task Texts_Empty_AreAcknowledged()
    {
        using var answer = await Send("/sms/reed", """{"letters":[]}""");

        Assert.Equal("""{"taken":0}""", Words(answer.Content));
    }

    [Fact]
    public async Task Texts_AllOfThemJunk_AreRefusedInAFewWords()
    {
        var junk = string.Join(',', Enumerable.Repeat("0", 30_000));

        using var answer = await Send("/sms/reed", $$"""{"letters":[{{junk}}]}""");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.InRange((await answer.Detail()).Length, 1, 4_000);
    }

    [Fact]
    public async Task Receipts_OfEachPart_AreShownToTheOffice()
    {
        GatewayAnswers("""{"letters":[{"tags":["r-1","r-2"]}]}""");
        using var text = await Send("/sms/reed",
            """{"letters":[{"tag":"l-1","writer":{"phone":"+256700000001"},"page":"HEAP"}]}""");
        var before = Assert.Single(await Outcomes(RunningService.RealNumber, 1));

        using var receipts = await Send("/receipts/reed", """
            {"news":[{"tag":"r-1","code":40,"clock":1772431500000},{"tag":"r-2","code":39},
            {"tag":"r-2","code":"40","clock":"soon"},{"tag":"nobody's","code":50}]}
            """);

        Assert.Equal(HttpStatusCode.OK, receipts.StatusCode);
        Assert.Equal(2, before.Parts);
        var after = Assert.Single(await Outcomes(RunningService.RealNumber, 1));
        Assert.Equal((DeliveryState.Delivered, 2), (after.State, after.PartsDelivered));
    }

    [Fact]
    public async Task Call_Missed_IsAnsweredByAText()
    {
        GatewayAnswers("{}");

        using var answer = await Send("/calls/reed", """{"ring":{"tag":"c-1","phone":"+256700000001"}}""");
        var sent = Assert.Single(await Sent(1));

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Contains("Heard: RING", sent.Body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-300, HttpStatusCode.OK)]
    [InlineData(60, HttpStatusCode.OK)]
    [InlineData(-301, HttpStatusCode.Unauthorized)]
    [InlineData(61, HttpStatusCode.Unauthorized)]
    public async Task Texts_LateOrEarly_AreTakenOnlyWhileFresh(int seconds, HttpStatusCode expected)
    {
        using var answer = await Send("/sms/reed", Two, RunningService.Start.AddSeconds(seconds));

        Assert.Equal(expected, answer.StatusCode);
    }

    [Fact]
    public async Task Texts_ChangedOnTheWay_AreRefused()
    {
        var forged = Two.Replace("HEAP", "STOP", StringComparison.Ordinal);

        using var answer = await Post("/sms/reed", forged, "application/json",
            headers => Prove(headers, Two, RunningService.Start));

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal("Prove who you are as Lines:reed:Auth says.", await answer.Detail());
        Assert.Equal(0, Service.Conversation.Heard);
    }

    private Task<HttpResponseMessage> Send(string path, string body, DateTimeOffset? at = null) =>
        Post(path, body, "application/json", headers => Prove(headers, body, at ?? RunningService.Start));

    private static void Prove(HttpRequestHeaders headers, string body, DateTimeOffset at)
    {
        var clock = at.ToUnixTimeSeconds().ToString(Invariant);
        var proof = HMACSHA256.HashData(
            "replace-this-reed-key-of-32-bytes"u8, Encoding.UTF8.GetBytes($"{clock}.{body}"));
        headers.Add("X-Reed-Clock", clock);
        headers.Add("X-Reed-Proof", "h1=" + Convert.ToHexStringLower(proof));
    }
}
