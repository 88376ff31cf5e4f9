using System.Net;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

public sealed class AllowedFromTests
{
    private const string Body = """{"id":"1","from":"+256700000001","to":"4040","text":"HEAP"}""";

    [Theory]
    [InlineData("127.0.0.1", HttpStatusCode.Accepted)]
    [InlineData("192.0.2.0/24, 127.0.0.0/8", HttpStatusCode.Accepted)]
    [InlineData("192.0.2.0/24", HttpStatusCode.Forbidden)]
    [InlineData("::1", HttpStatusCode.Forbidden)]
    public async Task Post_FromAnAddress_IsTakenFromNamedNetworksOnly(string allowed, HttpStatusCode expected)
    {
        using var answer = await Post([new("Lines:lake:AllowedFrom", allowed)], null);

        Assert.Equal(expected, answer.StatusCode);
    }

    [Theory]
    [InlineData("192.0.2.7", HttpStatusCode.Forbidden)]
    [InlineData("198.51.100.1, 192.0.2.7", HttpStatusCode.Forbidden)]
    public async Task Post_ClaimingAnotherAddress_IsNotBelievedOfAStranger(string claimed, HttpStatusCode expected)
    {
        using var answer = await Post([new("Lines:lake:AllowedFrom", "192.0.2.0/24")], claimed);

        Assert.Equal(expected, answer.StatusCode);
    }

    [Theory]
    [InlineData("192.0.2.7", HttpStatusCode.Accepted)]
    [InlineData("198.51.100.1", HttpStatusCode.Forbidden)]
    [InlineData("192.0.2.7, 198.51.100.1", HttpStatusCode.Forbidden)]
    [InlineData("198.51.100.1, 192.0.2.7", HttpStatusCode.Accepted)]
    public async Task Post_ThroughANamedProxy_CountsAsFromWhereTheProxyGotIt(string claimed, HttpStatusCode expected)
    {
        using var answer = await Post(
            [new("Lines:lake:AllowedFrom", "192.0.2.0/24"), new("Proxies", "127.0.0.1")], claimed);

        Assert.Equal(expected, answer.StatusCode);
    }

    private static async Task<HttpResponseMessage> Post(
        IEnumerable<KeyValuePair<string, string?>> settings, string? claimed)
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Real(folder.Path, settings: settings);
        return await service.Post(Body, "/sms/lake", sign: headers =>
        {
            RunningService.SignWith(RunningService.Secret, headers, Body, RunningService.Start);
            if (claimed is not null) headers.Add("X-Forwarded-For", claimed);
        });
    }
}
