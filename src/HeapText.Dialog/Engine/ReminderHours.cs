using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Hours of the day at which farmers may be written to unasked, in their own zone.</summary>
public static class ReminderHours
{
    /// <summary>Used until the farmer chooses.</summary>
    public const int Usual = 7;

    /// <summary>No reminder goes out before this time of the day: the earliest hour that may be chosen.</summary>
    private static readonly LocalTime Earliest = new(6, 0);

    /// <summary>No reminder goes out at or after this time of the day.</summary>
    public static readonly LocalTime Latest = new(19, 0);

    /// <summary>Hours a farmer may choose from.</summary>
    public static IReadOnlyList<int> All { get; } = [6, 7, 8, 12, 16];

    /// <summary>True while it is day where the farmer is, whatever hour was chosen.</summary>
    public static bool Allow(Farmer farmer, Instant now)
    {
        var time = now.InZone(FarmerClock.Zone(farmer)).TimeOfDay;
        return time >= Earliest && time < Latest;
    }
}
