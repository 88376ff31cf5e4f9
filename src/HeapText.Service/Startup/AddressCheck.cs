using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace HeapText.Service.Startup;

/// <summary>Finds out whether the addresses can be opened before anything is changed for the start.</summary>
internal static class AddressCheck
{
    /// <summary>Opens each address and closes it again; one with port 0 can always be opened.</summary>
    /// <exception cref="SettingsFaultsException">One is taken or not this machine's; names it.</exception>
    public static void RefuseTaken(IEnumerable<string> urls)
    {
        List<TcpListener> opened = [];
        try
        {
            foreach (var url in urls) opened.AddRange(Open(url));
        }
        finally
        {
            foreach (var listener in opened) listener.Dispose();
        }
    }

    /// <summary>Starts the service.</summary>
    /// <exception cref="SettingsFaultsException">An address or the certificate cannot be used after all.</exception>
    public static async Task Start(WebApplication app, CancellationToken cancel)
    {
        try
        {
            await app.StartAsync(cancel);
        }
        catch (Exception fault) when (fault is InvalidOperationException or IOException or SocketException
            or CryptographicException or FormatException or ArgumentException)
        {
            throw new SettingsFaultsException(
                [$"Urls: {fault.Message.ReplaceLineEndings(" ")} Mend Urls (--urls) or Kestrel:Certificates."], fault);
        }
    }

    private static IEnumerable<TcpListener> Open(string url)
    {
        var address = BindingAddress.Parse(url);
        if (address.Port == 0) yield break;
        var listener = new TcpListener(IpOf(address.Host), address.Port);
        try
        {
            listener.Start();
        }
        catch (SocketException fault)
        {
            listener.Dispose();
            throw new SettingsFaultsException(
                [$"Urls: '{url}' cannot be opened ({fault.Message}). Choose another address, as with --urls."], fault);
        }
        yield return listener;
    }

    // The server listens everywhere for a name it does not know.
    private static IPAddress IpOf(string host) =>
        host == "localhost" ? IPAddress.Loopback
        : IPAddress.TryParse(host.Trim('[', ']'), out var ip) ? ip
        : IPAddress.Any;
}
