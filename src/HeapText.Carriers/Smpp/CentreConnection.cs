using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;

namespace HeapText.Carriers.Smpp;

/// <summary>Opens connections to a line's message centre.</summary>
internal static class CentreConnection
{
    /// <summary>Opens one, sealed where the line says so.</summary>
    /// <param name="line">Where to.</param>
    /// <param name="trust">Whose certificates are trusted; null for those the machine trusts.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="SocketException">Nobody answers there.</exception>
    /// <exception cref="System.Security.Authentication.AuthenticationException">The certificate is not
    /// right.</exception>
    /// <exception cref="IOException">It broke while it was being sealed.</exception>
    public static async Task<Stream> Open(
        SmppLineOptions line, X509ChainPolicy? trust, CancellationToken cancel)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        Stream? stream = null;
        try
        {
            await socket.ConnectAsync(line.Host, line.Port, cancel);
            stream = new NetworkStream(socket, ownsSocket: true);
            if (!line.Tls) return stream;
            var tls = new SslStream(stream, leaveInnerStreamOpen: false);
            stream = tls;
            await tls.AuthenticateAsClientAsync(
                new SslClientAuthenticationOptions
                {
                    TargetHost = line.TlsName ?? line.Host,
                    CertificateChainPolicy = trust,
                },
                cancel);
            return tls;
        }
        catch
        {
            if (stream is null) socket.Dispose();
            else await stream.DisposeAsync();
            throw;
        }
    }
}
