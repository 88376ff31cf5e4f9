using System.Globalization;
using System.Text.RegularExpressions;
using HeapText.Carriers;
using PhoneNumbers;

namespace HeapText.Service.Startup;

/// <summary>Reads the Lines section.</summary>
internal static partial class LineSettingsReader
{
    private static readonly string[] Common =
        ["Form", "From", "Region", "Countries", "AllowedFrom", "SegmentsPerSecond", "SegmentsPerDay", "Backup"];

    private static readonly Dictionary<string, Form> Forms = new(StringComparer.Ordinal)
    {
        ["native"] = new Form(NativeSettingsReader.Known, NativeSettingsReader.Read),
        ["mapped"] = new Form(MappedSettingsReader.Known, MappedSettingsReader.Read),
        ["smpp"] = new Form(SmppSettingsReader.Known, SmppSettingsReader.Read),
    };

    /// <summary>The lines that could be read; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyList<LineOptions> Read(IConfigurationSection lines, List<string> faults)
    {
        List<LineOptions> read = [];
        foreach (var line in lines.GetChildren())
        {
            CheckName(line, faults);
            if (WithCommon(ReadForm(line, faults), line, faults) is { } whole) read.Add(whole);
        }

        CheckBackups(read, lines, faults);
        return read;
    }

    /// <summary>What a line of its form says beside what all lines say; null when it cannot be used.</summary>
    private static LineOptions? ReadForm(IConfigurationSection line, List<string> faults)
    {
        var name = SettingsReader.Filled(line["Form"]) ?? "native";
        if (!Forms.TryGetValue(name, out var form))
        {
            faults.Add($"{line.Path}:Form is no form of line. Write one of {string.Join(", ", Forms.Keys)}.");
            return null;
        }

        SettingsReader.RefuseOthers(line, [.. Common, .. form.Known], faults);
        return form.Read(line, faults);
    }

    // Reads it all even of a line that cannot be used, so that every fault is named at once.
    private static LineOptions? WithCommon(LineOptions? own, IConfigurationSection line, List<string> faults)
    {
        var from = ReadFrom(line, faults);
        var region = ReadRegion(line, faults);
        var countries = ReadCountries(line, faults);
        var allowed = NetworkSettingsReader.Read(line, $"{line.Path}:AllowedFrom", "AllowedFrom", faults);
        var rate = ReadRate(line, faults);
        var cap = SpendSettingsReader.ReadCap(line, faults);
        if (own is null) return null;
        return own with
        {
            Name = line.Key,
            From = from,
            Region = region,
            Countries = countries,
            AllowedFrom = allowed,
            SegmentsPerSecond = rate,
            SegmentsPerDay = cap,
            Backup = SettingsReader.Filled(line["Backup"]),
        };
    }

    private static void CheckName(IConfigurationSection line, List<string> faults)
    {
        if (line.Key == "practice")
            faults.Add($"{line.Path}: this name belongs to practice mode. Give the line another name.");
        else if (!Name().IsMatch(line.Key))
            faults.Add($"{line.Path}: a line's name is up to 32 of a-z, 0-9 and '-', "
                + "beginning with a letter. Rename it.");
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

    private static HashSet<string> ReadCountries(IConfigurationSection line, List<string> faults)
    {
        var countries = SettingsReader.Words(line["Countries"]?.ToUpperInvariant());
        var known = PhoneNumberUtil.GetInstance().GetSupportedRegions();
        foreach (var country in countries.Where(country => !known.Contains(country)))
            faults.Add($"{line.Path}:Countries names {country}, which is not a country. "
                + "Write two letters for each, like KE, UG.");
        return countries;
    }

    private static double ReadRate(IConfigurationSection line, List<string> faults)
    {
        const double usual = 10, least = 0.01, most = 10_000;
        if (SettingsReader.Filled(line["SegmentsPerSecond"]) is not { } text) return usual;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var rate)
            && rate is >= least and <= most)
            return rate;
        faults.Add($"{line.Path}:SegmentsPerSecond is no rate. Write segments a second from 0.01 to 10000, like 10.");
        return usual;
    }

    private static void CheckBackups(List<LineOptions> read, IConfigurationSection lines, List<string> faults)
    {
        foreach (var line in read.Where(line => line.Backup is not null))
        {
            if (line.Backup == line.Name || lines.GetChildren().All(other => other.Key != line.Backup))
                faults.Add($"Lines:{line.Name}:Backup is no other line. Write the name of one, or take it out.");
            else if (read.Find(other => other.Name == line.Backup) is { Countries.Count: > 0 } backup
                && (line.Countries.Count == 0 || !line.Countries.IsSubsetOf(backup.Countries)))
                faults.Add($"Lines:{line.Name}:Backup names {backup.Name}, whose Countries leave out some that this "
                    + "line takes. Add them there, or name another line.");
        }
    }

    /// <summary>A form of line: its own settings, and what reads them.</summary>
    private sealed record Form(string[] Known, Func<IConfigurationSection, List<string>, LineOptions?> Read);

    [GeneratedRegex("^[a-z][a-z0-9-]{0,31}$")]
    private static partial Regex Name();
}
