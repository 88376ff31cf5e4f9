using System.Globalization;
using System.Security.Cryptography;
using HeapText.Dialog.Engine;
using HeapText.Store;

namespace HeapText.Service.Startup;

/// <summary>Reads the settings from appsettings.json, the environment and the command line, and finds every
/// fault.</summary>
internal static class SettingsReader
{
    private const int SecretBytes = 32;

    // Practice numbers belong to nobody, so what seals them need not be secret.
    private static readonly string PracticeSecret = Convert.ToBase64String(SHA256.HashData("practice numbers"u8));
    private static readonly string[] Sections =
        ["Store", "Lines", "Spend", "Groups", "Methods", "Prices", "Materials", "Measures"];
    private static readonly string[] Known =
        ["Urls", "Proxies", "Dialogs", "Languages", "AmbientC", .. Sections, "Logging", "AllowedHosts", "Kestrel"];
    private static readonly string[] StoreKeys = ["Connection", "DataDirectory", "Secret", "RequireDurableServer"];

    /// <summary>Reads the settings.</summary>
    /// <exception cref="SettingsFaultsException">Something is missing or wrong.</exception>
    public static Settings Read(IConfiguration configuration, bool fresh)
    {
        var faults = new List<string>();
        RefuseOthers(configuration, Known, faults);
        RefuseValues(configuration, faults);
        var lines = LineSettingsReader.Read(configuration.GetSection("Lines"), faults);
        var practice = !configuration.GetSection("Lines").GetChildren().Any();
        if (fresh && !practice)
            faults.Add("--fresh is for practice mode: take it out, or take out the Lines settings.");

        var methods = MethodSettingsReader.Read(configuration.GetSection("Methods"), faults);
        var settings = new Settings
        {
            Urls = UrlSettingsReader.Read(configuration, practice, faults),
            Proxies = NetworkSettingsReader.Read(configuration, "Proxies", "Proxies", faults),
            Store = ReadStore(configuration.GetSection("Store"), practice, faults),
            Lines = lines,
            Spend = SpendSettingsReader.Read(configuration.GetSection("Spend"), faults),
            Groups = GroupSettingsReader.Read(configuration.GetSection("Groups"), faults),
            Methods = methods,
            GroupMethods = GroupSettingsReader.ReadMethods(configuration.GetSection("Groups"), methods, faults),
            GroupDistricts = GroupSettingsReader.ReadDistricts(configuration.GetSection("Groups"), faults),
            Prices = PriceSettingsReader.Read(configuration.GetSection("Prices"), faults),
            District = DistrictSettingsReader.Read(configuration, faults),
            AmbientC = ReadAmbient(Filled(configuration["AmbientC"]), faults),
            Dialogs = Filled(configuration["Dialogs"]),
            Languages = Words(configuration["Languages"]),
            Fresh = fresh,
        };
        return faults.Count == 0 ? settings : throw new SettingsFaultsException(faults);
    }

    private static double ReadAmbient(string? text, List<string> faults)
    {
        const double coldest = -10, hottest = 45;
        if (text is null) return Office.UsualAmbientC;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var degrees)
            && degrees is >= coldest and <= hottest)
            return degrees;
        faults.Add("AmbientC is no air temperature. Write degrees Celsius from -10 to 45, such as 25.");
        return Office.UsualAmbientC;
    }

    private static StoreOptions ReadStore(IConfigurationSection section, bool practice, List<string> faults)
    {
        RefuseOthers(section, StoreKeys, faults);
        var connection = Filled(section["Connection"]) ?? "";
        if (!bool.TryParse(Filled(section["RequireDurableServer"]) ?? bool.TrueString, out var durable))
            faults.Add("Store:RequireDurableServer is neither true nor false. Write one of them, or take it out.");
        return new StoreOptions
        {
            Connection = connection,
            DataDirectory = Path.GetFullPath(Filled(section["DataDirectory"]) ?? "data"),
            Secret = ReadSecret(Filled(section["Secret"]), practice, connection.Length == 0, faults),
            RequireDurableServer = durable,
        };
    }

    /// <summary>Names each key of a section that is none of the known ones.</summary>
    internal static void RefuseOthers(IConfiguration section, string[] known, List<string> faults)
    {
        foreach (var child in section.GetChildren())
        {
            if (!known.Contains(child.Key, StringComparer.OrdinalIgnoreCase))
                faults.Add($"{child.Path} is not a setting: use one of {string.Join(", ", known)}, or take it out.");
        }
    }

    // Such as Lines=lake, which would otherwise count as no line, and so as practice mode.
    private static void RefuseValues(IConfiguration configuration, List<string> faults)
    {
        foreach (var section in Sections.Select(configuration.GetSection).Where(one => Filled(one.Value) is not null))
            faults.Add($"{section.Path} is a section and holds no value itself. Write {section.Path}:Name=value.");
    }

    private static string ReadSecret(string? text, bool practice, bool embedded, List<string> faults)
    {
        if (text is null && practice) return embedded ? "" : PracticeSecret;
        if (text is null)
        {
            faults.Add("Store:Secret is missing; it hides telephone numbers. Make one with: openssl rand -base64 32");
            return "";
        }

        Span<byte> secret = stackalloc byte[SecretBytes];
        if (!Convert.TryFromBase64String(text, secret, out var length) || length != SecretBytes)
            faults.Add("Store:Secret is not 32 bytes in base64. Make one with: openssl rand -base64 32");
        return text;
    }

    /// <summary>The words of a setting that lists them.</summary>
    internal static HashSet<string> Words(string? text) =>
        [.. (text ?? "").Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries)];

    internal static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
