using System.Globalization;
using System.Text;
using HeapText.Carriers.Signing;
using NodaTime;

namespace HeapText.Carriers.Tests.Signing;

public sealed class WebhookSignatureTests
{
    private const string Id = "m-1";
    private const string Body = """{"id":"m-1","from":"4040","to":"+256700000001","text":"Habari"}""";
    private const string Secret = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==";
    private const string OtherSecret = "whsec_QUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFBQUFB";
    private static readonly Instant Sent = Instant.FromUnixTimeSeconds(1772424000);
    private static readonly string Timestamp = Sent.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);

    // From memory: the worked example of the Standard Webhooks libraries; openssl dgst gives the same signature.
    [Fact]
    public void Write_WorkedExampleOfTheSpecification_GivesItsSignature()
    {
        var signature = WebhookSignature.Write(
            [Key("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")], "msg_p5jXN8AQM9LWM0D4loKWxJek",
            Instant.FromUnixTimeSeconds(1614265330), """{"test": 2432232314}"""u8);

        Assert.Equal("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=", signature);
    }

    // printf 'm-1.1772424000.BODY' | openssl dgst -sha256 -hmac heaptext-signing-test-key-01 -binary | base64
    [Fact]
    public void Write_AgainstOpenssl_GivesTheSameSignature()
    {
        Assert.Equal("v1,2M4BtUBiE45OpG/eWEYrbV9baxoGFET10bEPAfmagdk=", Sign(Secret));
    }

    [Fact]
    public void Write_TwoKeys_SignsWithBoth()
    {
        Assert.Equal($"{Sign(Secret)} {Sign(OtherSecret)}", Sign(Secret, OtherSecret));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(300)]
    [InlineData(-60)]
    public void IsGenuine_WithinTheTimesAllowed_IsTrue(int age)
    {
        Assert.True(Check(now: Sent + Duration.FromSeconds(age)));
    }

    [Theory]
    [InlineData(301)]
    [InlineData(-61)]
    [InlineData(86_400)]
    public void IsGenuine_TooOldOrTooFarAhead_IsFalse(int age)
    {
        Assert.False(Check(now: Sent + Duration.FromSeconds(age)));
    }

    [Fact]
    public void IsGenuine_SignedWithTheSecondKey_IsTrue()
    {
        Assert.True(Check(keys: [OtherSecret, Secret]));
    }

    [Fact]
    public void IsGenuine_OneGoodSignatureAmongOthers_IsTrue()
    {
        Assert.True(Check(signatures: $"v1a,xyz v1,AAAA {Sign(OtherSecret)} {Sign(Secret)}"));
    }

    [Fact]
    public void IsGenuine_SignedWithAnotherKey_IsFalse()
    {
        Assert.False(Check(signatures: Sign(OtherSecret)));
    }

    [Theory]
    [InlineData(null, "ok", "ok")]
    [InlineData("", "ok", "ok")]
    [InlineData("m-2", "ok", "ok")]
    [InlineData("ok", null, "ok")]
    [InlineData("ok", "yesterday", "ok")]
    [InlineData("ok", "-1", "ok")]
    [InlineData("ok", "99999999999999999999", "ok")]
    [InlineData("ok", "1772424001", "ok")]
    [InlineData("ok", "ok", null)]
    [InlineData("ok", "ok", "")]
    [InlineData("ok", "ok", "v1,")]
    [InlineData("ok", "ok", "v1,not base64!")]
    [InlineData("ok", "ok", "v2,AAAA")]
    public void IsGenuine_HeaderMissingOrWrong_IsFalse(string? id, string? timestamp, string? signatures)
    {
        Assert.False(WebhookSignature.IsGenuine(
            [Key(Secret)], id == "ok" ? Id : id, timestamp == "ok" ? Timestamp : timestamp,
            signatures == "ok" ? Sign(Secret) : signatures, Encoding.UTF8.GetBytes(Body), Sent));
    }

    [Fact]
    public void IsGenuine_AnyBitOfTheBodyFlipped_IsFalse()
    {
        var body = Encoding.UTF8.GetBytes(Body);
        for (var bit = 0; bit < body.Length * 8; bit++)
        {
            var forged = body.ToArray();
            forged[bit / 8] ^= (byte)(1 << (bit % 8));

            Assert.False(WebhookSignature.IsGenuine([Key(Secret)], Id, Timestamp, Sign(Secret), forged, Sent),
                $"bit {bit}");
        }
    }

    [Fact]
    public void IsGenuine_AnyBitOfTheSignatureFlipped_IsFalse()
    {
        var signature = Convert.FromBase64String(Sign(Secret)["v1,".Length..]);
        for (var bit = 0; bit < signature.Length * 8; bit++)
        {
            var forged = signature.ToArray();
            forged[bit / 8] ^= (byte)(1 << (bit % 8));

            Assert.False(Check(signatures: "v1," + Convert.ToBase64String(forged)), $"bit {bit}");
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("whsec_")]
    [InlineData("aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==")]
    [InlineData("whsec_c2hvcnQ=")]
    [InlineData("whsec_not base64")]
    public void TryParse_NotASecret_IsRefused(string? text)
    {
        Assert.False(WebhookKey.TryParse(text, out _));
    }

    private static bool Check(string[]? keys = null, string? signatures = null, Instant? now = null) =>
        WebhookSignature.IsGenuine(
            [.. (keys ?? [Secret]).Select(Key)], Id, Timestamp, signatures ?? Sign(Secret),
            Encoding.UTF8.GetBytes(Body), now ?? Sent);

    private static string Sign(params string[] secrets) =>
        WebhookSignature.Write([.. secrets.Select(Key)], Id, Sent, Encoding.UTF8.GetBytes(Body));

    private static WebhookKey Key(string text) =>
        WebhookKey.TryParse(text, out var key) ? key : throw new ArgumentException("No secret.", nameof(text));
}
