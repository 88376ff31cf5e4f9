using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Local time where a farmer is.</summary>
internal static class FarmerClock
{
    public static DateTimeZone Zone(Farmer farmer) =>
        DateTimeZoneProviders.Tzdb.GetZoneOrNull(farmer.Zone) ?? DateTimeZone.Utc;

    /// <summary>The instant of the farmer's hour on a day. In a gap of the clock it is the first instant after it;
    /// when the hour comes twice it is the first of the two.</summary>
    public static Instant ReminderTime(Farmer farmer, LocalDate day) =>
        Zone(farmer).AtLeniently(day + new LocalTime(farmer.Hour ?? ReminderHours.Usual, 0)).ToInstant();

    /// <summary>The end of the hours in which a reminder of today may still arrive.</summary>
    public static Instant EndOfAllowed(Farmer farmer, Instant now)
    {
        var zone = Zone(farmer);
        return zone.AtLeniently(now.InZone(zone).Date + ReminderHours.Latest).ToInstant();
    }

    /// <summary>The given instant when reminders are allowed then, else the farmer's hour of that or the next
    /// day.</summary>
    public static Instant Allowed(Farmer farmer, Instant wanted)
    {
        var day = wanted.InZone(Zone(farmer)).Date;
        var opens = ReminderTime(farmer, day);
        if (wanted < opens) return opens;
        return wanted < EndOfAllowed(farmer, wanted) ? wanted : ReminderTime(farmer, day.PlusDays(1));
    }
}
