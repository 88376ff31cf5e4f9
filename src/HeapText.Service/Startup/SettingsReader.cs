using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace HeapText.Service.Startup;

/// <summary>Reads the settings from appsettings.json, the environment and the command line, and finds every fault.</summary>
internal static class SettingsReader
{
    private const int FewestSecretBytes = 32;
    private const string PracticeAddress = "http://127.0.0.1:5080";
    private const string RealAddress = "http://127.0.0.1:8080";

    // Practice numbers belong to nobody, so what seals them need not be secret.
    private static readonly byte[] PracticeSecret = SHA256.HashData(Encoding.UTF8.GetBytes("practice numbers"));

    /// <summary>Reads the settings.</summary>
    /// <exception cref="SettingsFaultsException">Something is missing or wrong.</exception>
    public static Settings Read(IConfiguration configuration, bool fresh)
    {
        var faults = new List<string>();
        RefuseUnknownKeys(configuration, faults);
        var lines = LineSettingsReader.Read(configuration.GetSection("Lines"), faults);
        var practice = !configuration.GetSection("Lines").GetChildren().Any();
        if (fresh && !practice)
            faults.Add("--fresh is for practice mode: take it out, or take out the Lines settings.");

        var settings = new Settings
        {
            Urls = ReadUrls(configuration["Urls"], practice, faults),
            Folder = Path.GetFullPath(Filled(configuration["Store:Folder"]) ?? "data"),
            StoreConnection = configuration["Store:Connection"]?.Trim() ?? "",
            NumberSecret = ReadSecret(Filled(configuration["Numbers:Secret"]), practice, faults),
            Lines = lines,
            Fresh = fresh,
        };
        return faults.Count == 0 ? settings : throw new SettingsFaultsException(faults);
    }

    private static void RefuseUnknownKeys(IConfiguration configuration, List<string> faults)
    {
        RefuseOthers(configuration.GetSection("Store"), ["Connection", "Folder"], faults);
        RefuseOthers(configuration.GetSection("Numbers"), ["Secret"], faults);
    }

    /// <summary>Names each key of a section that is none of the known ones.</summary>
    internal static void RefuseOthers(IConfigurationSection section, string[] known, List<string> faults)
    {
        foreach (var child in section.GetChildren())
        {
            if (!known.Contains(child.Key, StringComparer.OrdinalIgnoreCase))
                faults.Add($"{child.Path} is not a setting: use one of {string.Join(", ", known)}, or take it out.");
        }
    }

    private static string[] ReadUrls(string? text, bool practice, List<string> faults)
    {
        var written = (Filled(text) ?? (practice ? PracticeAddress : RealAddress))
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        foreach (var url in written)
        {
            if (!Uri.TryCreate(url.Replace("://*", "://0.0.0.0", StringComparison.Ordinal), UriKind.Absolute, out var uri)
                || uri.Scheme is not ("http" or "https"))
            {
                faults.Add($"Urls: '{url}' is not an address. Write one like {PracticeAddress}.");
            }
            else if (practice && !IsLoopback(uri))
            {
                faults.Add($"Urls: '{url}' can be reached from other machines, and practice mode takes texts from "
                    + $"anyone. Use {PracticeAddress}, or configure Lines.");
            }
        }

        return written;
    }

    private static bool IsLoopback(Uri uri) =>
        uri.Host == "localhost" || (IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    private static byte[] ReadSecret(string? text, bool practice, List<string> faults)
    {
        if (text is null)
        {
            if (practice) return PracticeSecret;
            faults.Add("Numbers:Secret is missing. Give 32 random bytes in base64, for example from: openssl rand -base64 32");
            return [];
        }

        var secret = new byte[text.Length];
        if (Convert.TryFromBase64String(text, secret, out var length) && length >= FewestSecretBytes)
            return secret[..length];
        faults.Add("Numbers:Secret is not 32 or more bytes in base64. Make one with: openssl rand -base64 32");
        return [];
    }

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
