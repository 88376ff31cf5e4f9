using System.Net;
using System.Text.Json;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Tests.Hooks;

public sealed class ReceiptHookTests : PracticeTests
{
    [Fact]
    public async Task Post_ReceiptOfASentMessage_IsShownWithIt()
    {
        var message = await SendOne();

        using var answer = await Post(message, "delivered", "2026-03-02T09:05:00+03:00");
        var sent = Assert.Single(await Sent());

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal("""{"accepted":true,"duplicate":false}""", (await answer.Json()).GetRawText());
        Assert.Equal((message, DeliveryState.Delivered), (sent.Id, sent.State));
        Assert.Equal(Instant.FromUtc(2026, 3, 2, 6, 5), sent.StateAt);
    }

    [Fact]
    public async Task Post_SameReceiptAgain_IsADuplicate()
    {
        var message = await SendOne();

        using var first = await Post(message, "failed");
        using var second = await Post(message, "failed");

        Assert.True((await second.Json()).GetProperty("duplicate").GetBoolean());
    }

    [Fact]
    public async Task Post_ReceiptWithoutTime_CountsAsOfNow()
    {
        var message = await SendOne();

        using var answer = await Post(message, "expired");

        Assert.Equal(RunningService.Start.ToInstant(), Assert.Single(await Sent()).StateAt);
    }

    [Fact]
    public async Task Post_ReceiptOfAMessageNobodyKnows_IsTakenAllTheSame()
    {
        using var answer = await Post("nobody-1", "rejected");

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
    }

    [Theory]
    [InlineData("""{"state":"delivered"}""", "message: it is missing")]
    [InlineData("""{"message":"m-1"}""", "state: it is missing")]
    [InlineData("""{"message":"m-1","state":"DELIVERED"}""", "delivered, failed, expired, rejected")]
    [InlineData("""{"message":"m-1","state":"sent"}""", "delivered, failed, expired, rejected")]
    [InlineData("""{"message":"m-1","state":"failed","at":"today"}""", "at: it is not a time")]
    [InlineData("""{"message":"m-1","state":"failed","at":"9999-12-31T23:59:59-18:00"}""", "at: it is not a time")]
    [InlineData("""{"message":"m-1","state":"failed","at":"0001-01-01T00:00:00+18:00"}""", "at: it is not a time")]
    [InlineData("""{"message":"m-1","state":"failed","at":5}""", "at: it is not a time")]
    public async Task Post_BadBody_NamesTheFault(string body, string fault)
    {
        using var answer = await Service.Post(body, "/receipts/practice");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(fault, await answer.Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_StoreGone_IsAskedToComeAgain()
    {
        Service.Store.IsGone = true;

        using var answer = await Post("m-1", "failed");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.NotNull(answer.Headers.RetryAfter);
    }

    private async Task<string> SendOne()
    {
        using var text = await Service.Text("1", "HEAP");
        var message = (await Service.WaitForMessages(1)).Single().GetProperty("id").GetString()!;
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(10));
        while ((await Sent()).Count == 0)
            await Task.Delay(TimeSpan.FromMilliseconds(10), TimeProvider.System, deadline.Token);
        return message;
    }

    private async Task<IReadOnlyList<SentMessage>> Sent()
    {
        Assert.True(Msisdn.TryParse(RunningService.Number, out var number));
        return await Service.Store.Sent(Service.Store.KeyOf(number), Token);
    }

    private Task<HttpResponseMessage> Post(string message, string state, string? at = null) =>
        Service.Post(JsonSerializer.Serialize(new { message, state, at }), "/receipts/practice");
}
