using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using HeapText.Carriers.Smpp;

namespace HeapText.Carriers.Tests.Smpp;

public sealed class SealedConnectionTests : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly X509Certificate2 _certificate = Certificate("centre.example");

    public SealedConnectionTests() => _listener.Start();

    public void Dispose()
    {
        _listener.Dispose();
        _certificate.Dispose();
    }

    [Fact]
    public async Task Open_TrustedCertificateOfThePinnedName_IsSealed()
    {
        var serving = Serve();

        await using var stream = await CentreConnection.Open(
            Line("centre.example"), Trust(), TestContext.Current.CancellationToken);

        Assert.True(Assert.IsType<SslStream>(stream).IsEncrypted);
        await stream.WriteAsync("x"u8.ToArray(), TestContext.Current.CancellationToken);
        Assert.Equal((byte)'x', await serving);
    }

    [Theory]
    [InlineData("other.example", true)]
    [InlineData(null, true)]
    [InlineData("centre.example", false)]
    public async Task Open_AnotherNameOrNobodyTrusted_IsRefused(string? name, bool isTrusted)
    {
        _ = Serve();

        await Assert.ThrowsAsync<AuthenticationException>(() => CentreConnection.Open(
            Line(name), isTrusted ? Trust() : null, TestContext.Current.CancellationToken));
    }

    private async Task<int> Serve()
    {
        using var client = await _listener.AcceptTcpClientAsync();
        await using var stream = new SslStream(client.GetStream());
        await stream.AuthenticateAsServerAsync(_certificate);
        var octet = new byte[1];
        await stream.ReadExactlyAsync(octet);
        return octet[0];
    }

    private SmppLineOptions Line(string? name) => new()
    {
        Name = "lake",
        From = "3344",
        Host = "127.0.0.1",
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port,
        Tls = true,
        TlsName = name,
        SystemId = "heap",
    };

    private X509ChainPolicy Trust() => new()
    {
        TrustMode = X509ChainTrustMode.CustomRootTrust,
        CustomTrustStore = { _certificate },
        RevocationMode = X509RevocationMode.NoCheck,
    };

    private static X509Certificate2 Certificate(string name)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=" + name, key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(name);
        request.CertificateExtensions.Add(names.Build());
        var now = TimeProvider.System.GetUtcNow();
        return request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
    }
}
