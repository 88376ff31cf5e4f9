using System.Globalization;
using HeapText.Carriers;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Startup;

/// <summary>What may be sent in a day, over all lines.</summary>
/// <param name="SegmentsPerDay">The most all lines together may send; null for no cap.</param>
/// <param name="Zone">Where the day turns, for this cap and those of lines.</param>
internal sealed record SpendOptions(long? SegmentsPerDay, DateTimeZone Zone)
{
    /// <summary>No cap, and days of UTC.</summary>
    public static readonly SpendOptions None = new(null, DateTimeZone.Utc);

    /// <summary>What one line may send.</summary>
    public LineBudget BudgetOf(LineOptions line) =>
        new(line.Name, line.SegmentsPerSecond, line.SegmentsPerDay, SegmentsPerDay, Zone);
}

/// <summary>Reads the Spend section.</summary>
internal static class SpendSettingsReader
{
    private static readonly string[] Known = ["SegmentsPerDay", "Zone"];

    /// <summary>What it says; every fault is added to <paramref name="faults"/>.</summary>
    public static SpendOptions Read(IConfigurationSection spend, List<string> faults)
    {
        SettingsReader.RefuseOthers(spend, Known, faults);
        return new SpendOptions(ReadCap(spend, faults), ReadZone(SettingsReader.Filled(spend["Zone"]), faults));
    }

    /// <summary>The most segments in a day that a section names; null for no cap.</summary>
    public static long? ReadCap(IConfigurationSection section, List<string> faults)
    {
        if (SettingsReader.Filled(section["SegmentsPerDay"]) is not { } text) return null;
        if (long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var cap) && cap > 0) return cap;
        faults.Add($"{section.Path}:SegmentsPerDay is no whole number above 0. "
            + "Write the most segments to send in a day, or take it out.");
        return null;
    }

    private static DateTimeZone ReadZone(string? name, List<string> faults)
    {
        if (name is null) return DateTimeZone.Utc;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is { } zone) return zone;
        faults.Add("Spend:Zone is no time zone. Write its tz database name, like Africa/Nairobi.");
        return DateTimeZone.Utc;
    }
}
