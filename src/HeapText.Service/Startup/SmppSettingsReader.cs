using System.Globalization;
using System.Net;
using HeapText.Carriers.Smpp;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Service.Startup;

/// <summary>Reads what an SMPP line says beside what all lines say.</summary>
internal static class SmppSettingsReader
{
    private const int UsualPort = 2775, UsualTlsPort = 3550;

    private static readonly Dictionary<string, Alphabet> Alphabets = new(StringComparer.Ordinal)
    {
        ["gsm"] = Alphabet.Gsm7,
        ["ascii"] = Alphabet.Ascii,
        ["latin1"] = Alphabet.Latin1,
        ["ucs2"] = Alphabet.Ucs2,
    };

    private static readonly Dictionary<string, LongTexts> LongTextForms = new(StringComparer.Ordinal)
    {
        ["udh"] = LongTexts.Headers,
        ["sar"] = LongTexts.Sar,
        ["payload"] = LongTexts.Payload,
    };

    private static readonly Dictionary<string, ReceiptIds> ReceiptIdForms = new(StringComparer.Ordinal)
    {
        ["as-is"] = ReceiptIds.AsIs,
        ["hex"] = ReceiptIds.InHex,
        ["decimal"] = ReceiptIds.InDecimal,
    };

    private static readonly Dictionary<string, SmppTimeForm> TimeForms = new(StringComparer.Ordinal)
    {
        ["relative"] = SmppTimeForm.Relative,
        ["absolute"] = SmppTimeForm.Absolute,
    };

    private static readonly Dictionary<string, bool> Switches = new(StringComparer.OrdinalIgnoreCase)
    {
        ["true"] = true,
        ["false"] = false,
    };

    /// <summary>The settings of an SMPP line.</summary>
    public static readonly string[] Known =
    [
        "Host", "Port", "Tls", "TlsName", "SystemId", "Password", "SystemType", "SourceTon", "SourceNpi", "ServiceType",
        "Alphabet", "LongTexts", "Validity", "Window", "EnquireEvery", "EnquireTimeout", "ResponseTimeout",
        "ReceiptIds", "Receipts", "ReconnectFirst", "ReconnectLongest",
    ];

    /// <summary>The line; null when it cannot be used. Every fault is added to <paramref name="faults"/>.</summary>
    public static SmppLineOptions? Read(IConfigurationSection line, List<string> faults)
    {
        var host = SettingsReader.Filled(line["Host"]) ?? "";
        if (host.Length == 0 || Uri.CheckHostName(host) == UriHostNameType.Unknown)
            faults.Add($"{line.Path}:Host is no name or address. Give the message centre's, like smsc.example.org.");
        var systemId = Text(line, "SystemId", 15, faults) ?? "";
        if (systemId.Length == 0)
            faults.Add($"{line.Path}:SystemId is missing. Give the name the message centre knows you by.");
        var tls = OneOf(line, "Tls", Switches, !IsLoopback(host), faults);
        var first = Time(line, "ReconnectFirst", (0.1, 60, 1), faults);
        var longest = Time(line, "ReconnectLongest", (0.1, 900, 60), faults);
        if (longest < first)
            faults.Add($"{line.Path}:ReconnectLongest is shorter than ReconnectFirst. Make it as long or longer.");
        return new SmppLineOptions
        {
            Name = line.Key,
            From = "",
            Host = host,
            Port = Number(line, "Port", (1, 65535, tls ? UsualTlsPort : UsualPort), faults),
            Tls = tls,
            TlsName = SettingsReader.Filled(line["TlsName"]),
            SystemId = systemId,
            Password = Text(line, "Password", 8, faults) ?? "",
            SystemType = Text(line, "SystemType", 12, faults) ?? "",
            SourceTon = Octet(line, "SourceTon", 6, faults),
            SourceNpi = Octet(line, "SourceNpi", 18, faults),
            ServiceType = Text(line, "ServiceType", 5, faults) ?? "",
            Alphabet = OneOf(line, "Alphabet", Alphabets, Alphabet.Gsm7, faults),
            LongTexts = OneOf(line, "LongTexts", LongTextForms, LongTexts.Headers, faults),
            Validity = OneOf(line, "Validity", TimeForms, SmppTimeForm.Relative, faults),
            Window = Number(line, "Window", (1, 1000, 10), faults),
            EnquireEvery = Time(line, "EnquireEvery", (5, 600, 30), faults),
            EnquireTimeout = Time(line, "EnquireTimeout", (1, 60, 10), faults),
            ResponseTimeout = Time(line, "ResponseTimeout", (1, 25, 10), faults),
            ReceiptIds = OneOf(line, "ReceiptIds", ReceiptIdForms, ReceiptIds.AsIs, faults),
            Receipts = OneOf(line, "Receipts", Switches, true, faults),
            ReconnectFirst = first,
            ReconnectLongest = longest,
        };
    }

    private static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));

    private static string? Text(IConfigurationSection line, string name, int most, List<string> faults)
    {
        var text = SettingsReader.Filled(line[name]);
        if (text is not null && (text.Length > most || text.Any(c => c is < ' ' or > '~')))
            faults.Add($"{line.Path}:{name} has more than {most} characters, or one that is not ASCII. "
                + "Write it as the message centre gave it.");
        return text;
    }

    private static T OneOf<T>(
        IConfigurationSection line, string name, Dictionary<string, T> known, T usual, List<string> faults)
    {
        if (SettingsReader.Filled(line[name]) is not { } text) return usual;
        if (known.TryGetValue(text, out var value)) return value;
        faults.Add(
            $"{line.Path}:{name} is none of {string.Join(", ", known.Keys)}. Write one of them, or take it out.");
        return usual;
    }

    private static int Number(
        IConfigurationSection line, string name, (int Least, int Most, int Usual) range, List<string> faults)
    {
        if (SettingsReader.Filled(line[name]) is not { } text) return range.Usual;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= range.Least && number <= range.Most)
            return number;
        faults.Add($"{line.Path}:{name} is no whole number from {range.Least} to {range.Most}. "
            + $"Write one, like {range.Usual}.");
        return range.Usual;
    }

    private static byte? Octet(IConfigurationSection line, string name, int most, List<string> faults)
    {
        if (SettingsReader.Filled(line[name]) is not { } text) return null;
        if (byte.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= most)
            return number;
        faults.Add($"{line.Path}:{name} is no whole number from 0 to {most}. "
            + "Write the one the message centre wants, or take it out.");
        return null;
    }

    private static TimeSpan Time(
        IConfigurationSection line, string name, (double Least, double Most, double Usual) seconds,
        List<string> faults)
    {
        var usual = TimeSpan.FromSeconds(seconds.Usual);
        if (SettingsReader.Filled(line[name]) is not { } text) return usual;
        if (TimeSpan.TryParse(text, CultureInfo.InvariantCulture, out var time)
            && time.TotalSeconds >= seconds.Least && time.TotalSeconds <= seconds.Most)
            return time;
        faults.Add(string.Create(CultureInfo.InvariantCulture,
            $"{line.Path}:{name} is not between {seconds.Least} and {seconds.Most} seconds. Write it like {usual:c}."));
        return usual;
    }
}
