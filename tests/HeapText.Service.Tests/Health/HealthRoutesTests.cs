using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Health;

public sealed class HealthRoutesTests : PracticeTests
{
    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task Health_AllWell_IsOk(string path)
    {
        using var answer = await Service.Http.GetAsync(path, Token);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Empty((await answer.Json()).GetProperty("reasons").EnumerateArray());
    }

    [Fact]
    public async Task Ready_StoreGone_SaysSoWhileTheProcessLives()
    {
        Service.Store.IsGone = true;

        using var ready = await Service.Http.GetAsync("/health/ready", Token);
        using var live = await Service.Http.GetAsync("/health/live", Token);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Contains("store", (await ready.Json()).GetProperty("reasons")[0].GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
    }

    [Fact]
    public async Task Ready_TextCouldNotBeKept_SaysSoUntilOneIsKept()
    {
        await Service.Text("0", "HEAP");
        Service.Store.IsFull = true;
        using var refused = await Service.Text("1", "HEAP");
        using var duplicate = await Service.Text("0", "HEAP");
        using var full = await Service.Http.GetAsync("/health/ready", Token);
        Service.Store.IsFull = false;
        using var taken = await Service.Text("1", "HEAP");
        using var well = await Service.Http.GetAsync("/health/ready", Token);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        Assert.Equal(HttpStatusCode.Accepted, duplicate.StatusCode);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, full.StatusCode);
        Assert.Contains("not kept", (await full.Json()).GetProperty("reasons")[0].GetString(),
            StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, well.StatusCode);
    }

    [Fact]
    public async Task Ready_LastRefusalIsLongAgo_IsOkSoThatTextsComeAgain()
    {
        Service.Store.IsFull = true;
        await Service.Text("1", "HEAP");
        Service.Time.Advance(TimeSpan.FromSeconds(31));

        using var ready = await Service.Http.GetAsync("/health/ready", Token);

        Assert.Equal(HttpStatusCode.OK, ready.StatusCode);
    }

    [Fact]
    public async Task OpenApi_TheDocument_ListsTheHook()
    {
        var document = await Service.Http.GetFromJsonAsync<JsonElement>("/openapi/v1.json", Token);

        var hook = document.GetProperty("paths").GetProperty("/sms/{line}").GetProperty("post");
        Assert.True(hook.GetProperty("responses").TryGetProperty("202", out _));
        Assert.True(hook.GetProperty("requestBody").GetProperty("content").TryGetProperty("application/json", out _));
    }
}
