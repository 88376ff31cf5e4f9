using System.Net;
using System.Text;
using HeapText.Dialog.Ports;
using Microsoft.AspNetCore.WebUtilities;

namespace HeapText.Service.Tests.Hooks;

/// <summary>A form comes in, the reply stands in the answer.</summary>
public sealed class MappedFormTests() : MappedTests("form-reply-in-answer.json")
{
    private const string Form = "application/x-www-form-urlencoded";
    private const string Farmer = "+254722000001";

    [Fact]
    public async Task Text_Answered_ReadsTheReplyInTheAnswer()
    {
        using var answer = await Note("n-1", "HEAP+41");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/plain; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("Heard: HEAP 41", Words(answer.Content));
        Assert.Empty(Gateway.LogEntries);
    }

    [Fact]
    public async Task Text_Again_GetsTheSameReplyAndHasOneEffect()
    {
        using var first = await Note("n-1", "TWICE");
        using var second = await Note("n-1", "TWICE");

        Assert.Equal("first\nsecond", Words(first.Content));
        Assert.Equal("first\nsecond", Words(second.Content));
        Assert.Equal(1, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Text_AgainSideBySide_GetsTheSameReplyAndHasOneEffect()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Note("n-1", "HEAP")));

        Assert.All(answers, answer => Assert.Equal("Heard: HEAP", Words(answer.Content)));
        Assert.Equal(1, Service.Conversation.Heard);
        foreach (var answer in answers) answer.Dispose();
    }

    [Fact]
    public async Task Text_AgainAfterTheReplyIsForgotten_IsAnsweredQuietly()
    {
        using var first = await Note("n-1", "HEAP");
        Service.Time.Advance(TimeSpan.FromHours(2));
        using var second = await Note("n-1", "HEAP");

        Assert.Equal(HttpStatusCode.NoContent, second.StatusCode);
        Assert.Equal("", Words(second.Content));
        Assert.Equal(1, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Text_WithMoreToSayLater_IsSentThenAndItsReceiptShown()
    {
        GatewayAnswers("kept 17\n");

        using var answer = await Note("n-1", "LATER");
        Service.Time.Advance(TimeSpan.FromMinutes(1));
        var sent = (await Sent(1, TimeSpan.FromMilliseconds(20)))[0];
        await Outcomes(Farmer, 1);
        using var receipt = await Post(
            "/receipts/bell", "note=17&fate=on+the+phone&moment=02.03.2026+09:05", Form, Prove);

        Assert.Equal("At once", Words(answer.Content));
        var fields = QueryHelpers.ParseQuery(sent.Body);
        Assert.Equal("254722000001", fields["callee"]);
        Assert.Equal("Later", fields["words"]);
        Assert.Equal("plain", fields["letters"]);
        Assert.Equal(
            "Basic " + Convert.ToBase64String(Encoding.UTF8.GetBytes("marula:replace-this-bell-password")),
            sent.Headers!["Authorization"].Single());
        Assert.Equal(HttpStatusCode.OK, receipt.StatusCode);
        var outcome = Assert.Single(await Outcomes(Farmer, 1));
        Assert.Equal(fields["mark"].Single(), outcome.Id);
        Assert.Equal(DeliveryState.Delivered, outcome.State);
        Assert.Equal(NodaTime.Instant.FromUtc(2026, 3, 2, 6, 5), outcome.StateAt);
    }

    [Fact]
    public async Task Receipt_StateOnTheWay_ChangesNothingAndIsAcknowledged()
    {
        using var receipt = await Post("/receipts/bell", "note=17&fate=walking&moment=never", Form, Prove);

        Assert.Equal(HttpStatusCode.OK, receipt.StatusCode);
    }

    [Fact]
    public async Task Text_StoreGone_IsNotPromised()
    {
        Service.Store.IsGone = true;
        using var answer = await Note("n-1", "HEAP");
        Service.Store.IsGone = false;
        using var again = await Note("n-1", "HEAP");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.NotNull(answer.Headers.RetryAfter);
        Assert.Equal("Heard: HEAP", Words(again.Content));
    }

    [Theory]
    [InlineData("", "From: it is missing. Id: it is missing.")]
    [InlineData("note=&caller=0722000001&words=x", "Id: it is empty.")]
    [InlineData("note=1&note=2&caller=0722000001", "Id: it stands there more than once; send it once.")]
    [InlineData("note=1%00&caller=0722000001", "Id: it holds control characters; send it without them.")]
    [InlineData("note=1&caller=%2B99910000001", "From: is a practice number, which no real line takes; send the "
        + "farmer's own number.")]
    public async Task Text_ThatCannotBeRead_IsToldWhy(string body, string fault)
    {
        using var answer = await Post("/sms/bell", body, Form, Prove);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(fault, await answer.Detail());
    }

    [Fact]
    public async Task Text_WithoutTheKey_IsRefused()
    {
        using var none = await Post("/sms/bell", "note=1&caller=0722000001", Form, _ => { });
        using var wrong = await Post("/sms/bell", "note=1&caller=0722000001", Form,
            headers => headers.Add("X-Bell-Key", "replace-this-bell-kez"));

        Assert.Equal(HttpStatusCode.Unauthorized, none.StatusCode);
        Assert.Equal(await none.Detail(), await wrong.Detail());
        Assert.Equal(0, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Text_BeyondTheLimit_IsRefused()
    {
        using var answer = await Note("n-1", new string('a', 64 * 1024));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task Text_FromAWebPage_IsRefused()
    {
        using var answer = await Post("/sms/bell", "note=1&caller=0722000001", Form, headers =>
        {
            Prove(headers);
            headers.Add("Origin", "https://elsewhere.example");
        });

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal(0, Service.Conversation.Heard);
    }

    [Fact]
    public async Task Hook_NotMapped_DoesNotExist()
    {
        using var ussd = await Post("/ussd/bell", "note=1", Form, Prove);
        using var get = await Get("/sms/bell?note=1");

        Assert.Equal(HttpStatusCode.NotFound, ussd.StatusCode);
        Assert.Equal("line: map it in Lines:bell:Ussd, or post to another line.", await ussd.Detail());
        Assert.Equal(HttpStatusCode.MethodNotAllowed, get.StatusCode);
        Assert.Equal("POST", get.Content.Headers.Allow.Single());
    }

    private Task<HttpResponseMessage> Note(string note, string words) =>
        Post("/sms/bell", $"note={note}&caller=0722000001&words={words}", Form, Prove);

    private static void Prove(System.Net.Http.Headers.HttpRequestHeaders headers) =>
        headers.Add("X-Bell-Key", "replace-this-bell-key");
}
