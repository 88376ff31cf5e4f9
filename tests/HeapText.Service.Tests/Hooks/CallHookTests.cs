using System.Net;
using System.Text.Json;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

public sealed class CallHookTests : PracticeTests
{
    [Fact]
    public async Task Post_MissedCall_IsAnsweredByText()
    {
        using var answer = await Ring("1");

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Equal("""{"accepted":true,"duplicate":false}""", (await answer.Json()).GetRawText());
        Assert.Equal("Heard: RING", (await Service.WaitForMessages(1)).Single().GetProperty("text").GetString());
    }

    [Fact]
    public async Task Post_SameCallAgain_IsADuplicateWithoutEffect()
    {
        using var first = await Ring("1");
        using var second = await Ring("1");
        using var text = await Service.Text("2", "HEAP");

        Assert.True((await second.Json()).GetProperty("duplicate").GetBoolean());
        Assert.Equal(2, (await Service.WaitForMessages(2)).Count);
    }

    [Fact]
    public async Task Post_CallWithTheIdOfAText_IsAnotherThing()
    {
        using var text = await Service.Text("1", "HEAP");
        using var call = await Ring("1");

        Assert.False((await call.Json()).GetProperty("duplicate").GetBoolean());
    }

    [Theory]
    [InlineData("""{"from":"+99910000001"}""", "id: it is missing")]
    [InlineData("""{"id":"1"}""", "from: it is missing")]
    [InlineData("""{"id":"1","from":"+256700000001"}""", "+999")]
    [InlineData("[]", "id and from")]
    public async Task Post_BadBody_NamesTheFault(string body, string fault)
    {
        using var answer = await Service.Post(body, "/calls/practice");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(fault, await answer.Detail(), StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> Ring(string id) =>
        Service.Post(JsonSerializer.Serialize(new { id, from = RunningService.Number }), "/calls/practice");
}
