using System.Net;
using System.Net.Http.Headers;
using HeapText.Carriers.Signing;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Hooks;

public sealed class SignatureTests : IAsyncLifetime
{
    private const string Body = """{"id":"1","from":"+256700000001","to":"4040","text":"HEAP"}""";
    private readonly TempFolder _folder = new();
    private RunningService _service = null!;

    public async ValueTask InitializeAsync() => _service = await RunningService.Real(_folder.Path);

    public async ValueTask DisposeAsync()
    {
        await _service.DisposeAsync();
        _folder.Dispose();
    }

    [Theory]
    [InlineData(RunningService.Secret, 0)]
    [InlineData(RunningService.SecondSecret, 0)]
    [InlineData(RunningService.Secret, -300)]
    [InlineData(RunningService.Secret, 60)]
    public async Task Post_GenuineMessage_IsAccepted(string secret, int seconds)
    {
        using var answer = await Post(headers => Sign(headers, secret, seconds));

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
    }

    public static TheoryData<string, Action<HttpRequestHeaders>> Forged { get; } = new()
    {
        { "no headers", _ => { } },
        { "301 s old", headers => Sign(headers, RunningService.Secret, -301) },
        { "61 s ahead", headers => Sign(headers, RunningService.Secret, 61) },
        { "another key", headers => Sign(headers, "whsec_" + Convert.ToBase64String(new byte[32]), 0) },
        { "another id", headers => Change(headers, WebhookSignature.IdHeader, "w-2") },
        { "another time", headers => Change(headers, WebhookSignature.TimestampHeader, "1772431201") },
        { "no id", headers => Change(headers, WebhookSignature.IdHeader, null) },
        { "no time", headers => Change(headers, WebhookSignature.TimestampHeader, null) },
        { "no signature", headers => Change(headers, WebhookSignature.SignatureHeader, null) },
        { "broken signature", headers => Change(headers, WebhookSignature.SignatureHeader, "v1,AAAA") },
    };

    [Theory]
    [MemberData(nameof(Forged), DisableDiscoveryEnumeration = true)]
    public async Task Post_ForgedOrLate_IsRefusedWithoutSayingWhy(string how, Action<HttpRequestHeaders> sign)
    {
        using var plain = await Post(_ => { });
        using var answer = await Post(sign);

        Assert.True(HttpStatusCode.Unauthorized == answer.StatusCode, how);
        Assert.Equal(await plain.Content.ReadAsStringAsync(Token), await answer.Content.ReadAsStringAsync(Token));
        Assert.Equal(0, _service.Conversation.Heard);
    }

    [Fact]
    public async Task Post_AnyByteOfTheBodyChanged_IsRefused()
    {
        for (var i = 0; i < Body.Length; i++)
        {
            var forged = string.Concat(Body.AsSpan(0, i), ((char)(Body[i] ^ 1)).ToString(), Body.AsSpan(i + 1));
            using var answer = await _service.Post(
                forged, "/sms/lake", sign: headers => Sign(headers, RunningService.Secret, 0));

            Assert.True(HttpStatusCode.Unauthorized == answer.StatusCode, $"byte {i}");
        }
    }

    [Fact]
    public async Task Post_PracticeNumberOnARealLine_IsRefused()
    {
        var body = Body.Replace("+256700000001", "+99910000001", StringComparison.Ordinal);

        using var answer = await _service.Post(body, "/sms/lake",
            sign: headers => RunningService.SignWith(RunningService.Secret, headers, body, RunningService.Start));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("from: is a practice number", await answer.Detail(), StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> Post(Action<HttpRequestHeaders> sign) =>
        _service.Post(Body, "/sms/lake", sign: sign);

    private static void Sign(HttpRequestHeaders headers, string secret, int seconds) =>
        RunningService.SignWith(secret, headers, Body, RunningService.Start.AddSeconds(seconds));

    private static void Change(HttpRequestHeaders headers, string name, string? value)
    {
        Sign(headers, RunningService.Secret, 0);
        headers.Remove(name);
        if (value is not null) headers.Add(name, value);
    }
}
