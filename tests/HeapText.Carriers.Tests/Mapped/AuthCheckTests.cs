using System.Security.Cryptography;
using System.Text;
using HeapText.Carriers.Mapped;
using Microsoft.AspNetCore.Http;
using NodaTime;

namespace HeapText.Carriers.Tests.Mapped;

public sealed class AuthCheckTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 2, 4, 0);
    private static readonly byte[] Key = Encoding.UTF8.GetBytes("a key of more than sixteen bytes");
    private static readonly LineSecret[] Secrets = [new("new secret"), new("old secret")];

    [Theory]
    [InlineData("Basic", "bWFydWxhOm5ldyBzZWNyZXQ=", true)]
    [InlineData("basic", "bWFydWxhOm9sZCBzZWNyZXQ=", true)]
    [InlineData("Basic", "bWFydWxhOm5ldyBzZWNyZXR0", false)]
    [InlineData("Basic", "TWFydWxhOm5ldyBzZWNyZXQ=", false)]
    [InlineData("Basic", "bWFydWxh", false)]
    [InlineData("Basic", "!", false)]
    [InlineData("Basic", "", false)]
    [InlineData("Bearer", "bWFydWxhOm5ldyBzZWNyZXQ=", false)]
    public void IsGenuine_NameAndPassword_MustBothBeRight(string scheme, string given, bool genuine) =>
        Check(new LineAuth.Basic("marula", Secrets), genuine, ("Authorization", $"{scheme} {given}"));

    [Theory]
    [InlineData("Bearer new secret", true)]
    [InlineData("Bearer old secret", true)]
    [InlineData("Bearer new secret ", true)]
    [InlineData("Bearer New secret", false)]
    [InlineData("Bearer", false)]
    [InlineData("new secret", false)]
    [InlineData("", false)]
    public void IsGenuine_Token_MustBeALiveOne(string given, bool genuine) =>
        Check(new LineAuth.Bearer(Secrets), genuine, ("Authorization", given));

    [Theory]
    [InlineData("new secret", true)]
    [InlineData("old secret", true)]
    [InlineData("new secre", false)]
    [InlineData("", false)]
    public void IsGenuine_KeyInAHeader_MustBeALiveOne(string given, bool genuine) =>
        Check(new LineAuth.HeaderKey("X-Key", Secrets), genuine, ("X-Key", given));

    [Fact]
    public void IsGenuine_KeyInTwoHeaders_IsRefused() => Assert.False(AuthCheck.IsGenuine(
        new LineAuth.HeaderKey("X-Key", Secrets),
        Request(headers: new HeaderDictionary { ["X-Key"] = new(["new secret", "guess"]) }), Now));

    [Theory]
    [InlineData("gate=new%20secret", true)]
    [InlineData("a=1&gate=old+secret", true)]
    [InlineData("gate=guess", false)]
    [InlineData("gate=new%20secret&gate=guess", false)]
    [InlineData("", false)]
    public void IsGenuine_KeyInTheQuery_MustBeALiveOne(string query, bool genuine) =>
        Assert.Equal(genuine, AuthCheck.IsGenuine(new LineAuth.QueryKey("gate", Secrets), Request(query: query), Now));

    /// <summary>RFC 4231, test case 2.</summary>
    [Theory]
    [InlineData(false, "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843")]
    [InlineData(true, "164b7a7bfcf819e2e395fbe73b56e0a387bd64222e831fd610270cd7ea250554"
        + "9758bf75c05a994a6d034f65f8f0e6fdcaeab1a34d4a6b4b636e070a38bce737")]
    public void IsGenuine_HashOfTheStandard_IsTaken(bool isLong, string hash)
    {
        var scheme = Scheme("{body}") with { Keys = ["Jefe"u8.ToArray()], IsLong = isLong };
        var request = Request(
            "what do ya want for nothing?", headers: new HeaderDictionary { ["X-Seal"] = hash.ToUpperInvariant() });

        Assert.True(AuthCheck.IsGenuine(new LineAuth.Hmac(scheme), request, Now));
    }

    [Fact]
    public void IsGenuine_AnyBitOfWhatIsCoveredChanged_IsRefused()
    {
        const string body = "{\"id\":1}";
        var scheme = Scheme("{method}|{path}|{query}|{header:X-Extra}|{timestamp}|{body}", "X-Time");
        var auth = new LineAuth.Hmac(scheme);
        var stamp = Now.ToUnixTimeSeconds().ToString(System.Globalization.CultureInfo.InvariantCulture);
        var seal = Seal($"POST|/sms/pine|a=1|x|{stamp}|{body}");
        HeaderDictionary Headers(string s, string extra, string time) =>
            new() { ["X-Seal"] = s, ["X-Extra"] = extra, ["X-Time"] = time };

        Assert.True(AuthCheck.IsGenuine(auth, Request(body, "a=1", Headers(seal, "x", stamp)), Now));
        Assert.False(AuthCheck.IsGenuine(auth, Request(body, "a=2", Headers(seal, "x", stamp)), Now));
        Assert.False(AuthCheck.IsGenuine(auth, Request(body, "a=1", Headers(seal, "y", stamp)), Now));
        var later = (Now.ToUnixTimeSeconds() + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        Assert.False(AuthCheck.IsGenuine(auth, Request(body, "a=1", Headers(seal, "x", later)), Now));
        Assert.False(AuthCheck.IsGenuine(
            auth, Request(body, "a=1", Headers(seal, "x", stamp)) with { Method = "PUT" }, Now));
        Assert.False(AuthCheck.IsGenuine(
            auth, Request(body, "a=1", Headers(seal, "x", stamp)) with { Path = "/sms/reed" }, Now));
        for (var bit = 0; bit < body.Length * 8; bit++)
        {
            var forged = Encoding.UTF8.GetBytes(body);
            forged[bit / 8] ^= (byte)(1 << (bit % 8));
            var request = Request(body, "a=1", Headers(seal, "x", stamp)) with { Body = forged };
            Assert.False(AuthCheck.IsGenuine(auth, request, Now), $"bit {bit}");
        }

        for (var i = 0; i < seal.Length; i++)
        {
            var forged = string.Concat(seal.AsSpan(0, i), seal[i] == '0' ? "1" : "0", seal.AsSpan(i + 1));
            var request = Request(body, "a=1", Headers(forged, "x", stamp));
            Assert.False(AuthCheck.IsGenuine(auth, request, Now), $"sign {i}");
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("v1=")]
    [InlineData("zz")]
    [InlineData("00")]
    public void IsGenuine_NoHash_IsRefused(string seal) =>
        Check(new LineAuth.Hmac(Scheme("{body}")), false, ("X-Seal", seal));

    [Theory]
    [InlineData(0, true)]
    [InlineData(-300, true)]
    [InlineData(-301, false)]
    [InlineData(60, true)]
    [InlineData(61, false)]
    public void IsGenuine_SignedWithItsTime_IsTakenOnlyWhileFresh(int seconds, bool genuine)
    {
        foreach (var inMilliseconds in new[] { false, true })
        {
            var scheme = Scheme("{timestamp}.{body}", "X-Time") with { IsInMilliseconds = inMilliseconds };
            var stamp = scheme.Stamp(Now + Duration.FromSeconds(seconds));
            Check(new LineAuth.Hmac(scheme), genuine, ("X-Time", stamp), ("X-Seal", Seal($"{stamp}.body")));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("-1")]
    [InlineData("soon")]
    [InlineData("99999999999999999999")]
    public void IsGenuine_TimeThatIsNone_IsRefused(string stamp) => Check(
        new LineAuth.Hmac(Scheme("{timestamp}.{body}", "X-Time")), false,
        ("X-Time", stamp), ("X-Seal", Seal($"{stamp}.body")));

    [Fact]
    public void IsGenuine_EitherLiveKey_IsTaken()
    {
        var scheme = Scheme("{body}") with { Keys = [new byte[32], Key] };

        Check(new LineAuth.Hmac(scheme), true, ("X-Seal", Seal("body")));
    }

    [Fact]
    public void ToString_OfAnything_ShowsNoSecret()
    {
        Assert.DoesNotContain("new secret", new LineAuth.Bearer(Secrets).ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("new secret", Secrets[0].ToString(), StringComparison.Ordinal);
    }

    private static void Check(LineAuth auth, bool genuine, params (string Name, string Value)[] headers)
    {
        var given = new HeaderDictionary();
        foreach (var (name, value) in headers) given[name] = value;
        Assert.Equal(genuine, AuthCheck.IsGenuine(auth, Request("body", headers: given), Now));
    }

    private static HookRequest Request(string body = "", string query = "", HeaderDictionary? headers = null) =>
        new("POST", "/sms/pine", query, headers ?? [], Encoding.UTF8.GetBytes(body));

    private static HmacScheme Scheme(string over, string? stamp = null) => new()
    {
        Keys = [Key],
        Over = Template.Parse(over),
        Header = "X-Seal",
        TimestampHeader = stamp,
    };

    private static string Seal(string covered) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(Key, Encoding.UTF8.GetBytes(covered)));
}
