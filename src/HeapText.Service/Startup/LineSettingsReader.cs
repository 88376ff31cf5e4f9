using System.Globalization;
using System.Text.RegularExpressions;
using HeapText.Carriers.Native;
using HeapText.Carriers.Signing;
using PhoneNumbers;

namespace HeapText.Service.Startup;

/// <summary>Reads the Lines section.</summary>
internal static partial class LineSettingsReader
{
    private const int MostKeys = 2;
    private static readonly string[] Known = ["Url", "Secrets", "From", "Region", "Timeout"];
    private static readonly TimeSpan ShortestTimeout = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestTimeout = TimeSpan.FromSeconds(25);

    /// <summary>The lines that could be read; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyList<NativeLineOptions> Read(IConfigurationSection lines, List<string> faults)
    {
        var read = new List<NativeLineOptions>();
        foreach (var line in lines.GetChildren())
        {
            SettingsReader.RefuseOthers(line, Known, faults);
            var name = ReadName(line, faults);
            var url = ReadUrl(line, faults);
            var keys = ReadKeys(line, faults);
            var from = ReadFrom(line, faults);
            var region = ReadRegion(line, faults);
            var timeout = ReadTimeout(line, faults);
            if (url is not null)
            {
                read.Add(new NativeLineOptions
                {
                    Name = name,
                    Url = url,
                    Keys = keys,
                    From = from,
                    Region = region,
                    Timeout = timeout,
                });
            }
        }

        return read;
    }

    private static string ReadName(IConfigurationSection line, List<string> faults)
    {
        if (line.Key == "practice")
            faults.Add($"{line.Path}: this name belongs to practice mode. Give the line another name.");
        else if (!Name().IsMatch(line.Key))
            faults.Add($"{line.Path}: a line's name is up to 32 of a-z, 0-9 and '-', "
                + "beginning with a letter. Rename it.");
        return line.Key;
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

    private static string ReadFrom(IConfigurationSection line, List<string> faults)
    {
        var from = line["From"]?.Trim() ?? "";
        if (from.Length is 0 or > 16)
            faults.Add($"{line.Path}:From is missing or too long. "
                + "Give the number or short code farmers see, up to 16 characters.");
        return from;
    }

    private static string? ReadRegion(IConfigurationSection line, List<string> faults)
    {
        var region = line["Region"]?.Trim().ToUpperInvariant();
        if (string.IsNullOrEmpty(region)) return null;
        if (!PhoneNumberUtil.GetInstance().GetSupportedRegions().Contains(region))
            faults.Add($"{line.Path}:Region is not a country. Write its two letters, like KE, or take it out.");
        return region;
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

    [GeneratedRegex("^[a-z][a-z0-9-]{0,31}$")]
    private static partial Regex Name();
}
