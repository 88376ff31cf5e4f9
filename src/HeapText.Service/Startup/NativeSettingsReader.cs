using System.Globalization;
using HeapText.Carriers.Native;
using HeapText.Carriers.Signing;

namespace HeapText.Service.Startup;

/// <summary>Reads what a native line says beside what all lines say.</summary>
internal static class NativeSettingsReader
{
    private const int MostKeys = 2;
    private static readonly TimeSpan ShortestTimeout = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestTimeout = TimeSpan.FromSeconds(25);

    /// <summary>The settings of a native line.</summary>
    public static readonly string[] Known = ["Url", "Secrets", "Timeout"];

    /// <summary>The line; null when it cannot be used. Every fault is added to <paramref name="faults"/>.</summary>
    public static NativeLineOptions? Read(IConfigurationSection line, List<string> faults)
    {
        var url = ReadUrl(line, faults);
        var keys = ReadKeys(line, faults);
        var timeout = ReadTimeout(line, faults);
        return url is null
            ? null
            : new NativeLineOptions { Name = line.Key, From = "", Url = url, Keys = keys, Timeout = timeout };
    }

    private static Uri? ReadUrl(IConfigurationSection line, List<string> faults)
    {
        var text = line["Url"];
        if (string.IsNullOrWhiteSpace(text))
        {
            faults.Add($"{line.Path}:Url is missing. Give the gateway's https address that takes messages.");
            return null;
        }

        // Plain http carries numbers in the clear, so only a gateway on this machine may use it.
        if (Uri.TryCreate(text, UriKind.Absolute, out var url)
            && (url.Scheme == Uri.UriSchemeHttps || (url.Scheme == Uri.UriSchemeHttp && url.IsLoopback)))
        {
            return url;
        }

        faults.Add($"{line.Path}:Url is not an https address. Give the gateway's https address that takes messages.");
        return null;
    }

    private static List<WebhookKey> ReadKeys(IConfigurationSection line, List<string> faults)
    {
        var keys = new List<WebhookKey>();
        var written = line.GetSection("Secrets").GetChildren().ToList();
        if (written.Count is 0 or > MostKeys)
            faults.Add($"{line.Path}:Secrets holds {written.Count} secrets. Give one or two, as "
                + $"{line.Path}:Secrets:0 and :1, each whsec_ followed by 24 to 64 random bytes in base64.");
        foreach (var secret in written)
        {
            if (WebhookKey.TryParse(secret.Value, out var key)) keys.Add(key);
            else
                faults.Add($"{secret.Path} is not a secret. Write whsec_ followed by 24 to 64 random bytes in base64.");
        }

        return keys;
    }

    private static TimeSpan ReadTimeout(IConfigurationSection line, List<string> faults)
    {
        var text = line["Timeout"];
        if (string.IsNullOrWhiteSpace(text)) return TimeSpan.FromSeconds(10);
        if (!TimeSpan.TryParse(text, CultureInfo.InvariantCulture, out var timeout)
            || timeout < ShortestTimeout || timeout > LongestTimeout)
        {
            faults.Add($"{line.Path}:Timeout is not between 1 and 25 seconds. Write it like 00:00:10.");
        }

        return timeout;
    }
}
