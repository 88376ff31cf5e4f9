using System.Globalization;
using HeapText.Agronomy.Heap;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Service.Startup;

/// <summary>Reads the Groups section: a village group under its code.</summary>
internal static class GroupSettingsReader
{
    private const int HighestCode = 9999;
    private static readonly string[] Known = ["Name", "Language", "Zone", "Officer", "Method", "District"];

    /// <summary>The groups; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyList<Group> Read(IConfigurationSection groups, List<string> faults)
    {
        List<Group> read = [];
        foreach (var group in groups.GetChildren())
        {
            SettingsReader.RefuseOthers(group, Known, faults);
            if (!int.TryParse(group.Key, NumberStyles.None, CultureInfo.InvariantCulture, out var code)
                || code is < 1 or > HighestCode)
                faults.Add($"{group.Path}: a group's code is a number from 1 to {HighestCode}. Give it another.");
            read.Add(new Group(code, Name(group, "Name", faults), group["Language"] ?? "en", Zone(group, faults),
                Name(group, "Officer", faults)));
        }
        return read;
    }

    /// <summary>The method of each group that has one of its own, by code; every fault is added to
    /// <paramref name="faults"/>.</summary>
    public static IReadOnlyDictionary<int, string> ReadMethods(
        IConfigurationSection groups, IReadOnlyDictionary<string, HeapMethod> methods, List<string> faults)
    {
        Dictionary<int, string> read = [];
        foreach (var group in groups.GetChildren())
        {
            if (group["Method"]?.Trim() is not { } key) continue;
            if (!methods.ContainsKey(key))
                faults.Add($"{group.Path}:Method is no method: use one of {string.Join(", ", methods.Keys)}.");
            else if (int.TryParse(group.Key, NumberStyles.None, CultureInfo.InvariantCulture, out var code))
                read[code] = key;
        }
        return read;
    }

    /// <summary>The district of each group that is none of its own, by code; every fault is added to
    /// <paramref name="faults"/>.</summary>
    public static IReadOnlyDictionary<int, string> ReadDistricts(IConfigurationSection groups, List<string> faults)
    {
        Dictionary<int, string> read = [];
        foreach (var group in groups.GetChildren())
        {
            if (group["District"]?.Trim() is not { } name) continue;
            if (name.Length is 0 or > Phrasebook.LongestName)
                faults.Add($"{group.Path}:District is empty or too long. Give up to {Phrasebook.LongestName} letters.");
            else if (int.TryParse(group.Key, NumberStyles.None, CultureInfo.InvariantCulture, out var code))
                read[code] = name;
        }
        return read;
    }

    private static string Name(IConfigurationSection group, string key, List<string> faults)
    {
        var name = group[key]?.Trim() ?? "";
        if (name.Length is 0 or > Phrasebook.LongestName)
            faults.Add($"{group.Path}:{key} is missing or too long. Give up to {Phrasebook.LongestName} letters.");
        return name;
    }

    private static string Zone(IConfigurationSection group, List<string> faults)
    {
        var zone = group["Zone"]?.Trim() ?? "";
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            faults.Add($"{group.Path}:Zone is no time zone of the tz database. Write one like Africa/Nairobi.");
        return zone;
    }
}
