using System.Net;

namespace HeapText.Service.Startup;

/// <summary>Reads the Urls setting: the addresses to listen on.</summary>
internal static class UrlSettingsReader
{
    private const string PracticeAddress = "http://127.0.0.1:5080";
    private const string RealAddress = "http://127.0.0.1:8080";

    /// <summary>The addresses; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyList<string> Read(IConfiguration configuration, bool practice, List<string> faults)
    {
        // They would take the place of Urls, and open practice mode to other machines.
        if (configuration.GetSection("Kestrel:Endpoints").GetChildren().Any())
            faults.Add("Kestrel:Endpoints is not a setting here. Write the addresses in Urls.");
        var certified = configuration.GetSection("Kestrel:Certificates:Default").GetChildren().Any();
        var text = SettingsReader.Filled(configuration["Urls"]) ?? (practice ? PracticeAddress : RealAddress);
        var urls = text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (urls.Length == 0) faults.Add($"Urls: '{text}' holds no address. Write one like {PracticeAddress}.");
        faults.AddRange(urls.Select(url => FaultOf(url, practice, certified)).OfType<string>());
        return urls;
    }

    private static string? FaultOf(string url, bool practice, bool certified)
    {
        var absolute = url.Replace("://*", "://0.0.0.0", StringComparison.Ordinal);
        if (!Uri.TryCreate(absolute, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https"))
            return $"Urls: '{url}' is not an address. Write one like {PracticeAddress}.";
        if (uri.PathAndQuery != "/" || uri.Fragment.Length > 0)
            return $"Urls: '{url}' has something after the port. Write it like {PracticeAddress}.";
        if (uri.Scheme == Uri.UriSchemeHttps && !certified)
            return $"Urls: '{url}' needs a certificate. Name its file in Kestrel:Certificates:Default:Path, or use http.";
        return practice && !IsLoopback(uri)
            ? $"Urls: '{url}' can be reached from other machines, and practice mode takes texts from anyone. "
                + $"Use {PracticeAddress}, or configure Lines."
            : null;
    }

    private static bool IsLoopback(Uri uri) =>
        uri.Host == "localhost"
        || (IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
}
