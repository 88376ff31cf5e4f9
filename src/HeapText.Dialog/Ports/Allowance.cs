using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>How much a line may send, whichever instance sends.</summary>
/// <param name="Line">Name of the line.</param>
/// <param name="SegmentsPerSecond">The most it may send in any second; below 1, one segment in that part of a second's
/// inverse. [segments/s]</param>
/// <param name="SegmentsPerDay">The most it may send in a day; null for no cap.</param>
/// <param name="SegmentsPerDayOfAll">The most all lines together may send in a day; null for no cap.</param>
/// <param name="Zone">Where the day turns at midnight.</param>
public sealed record LineBudget(
    string Line, double SegmentsPerSecond, long? SegmentsPerDay, long? SegmentsPerDayOfAll, DateTimeZone Zone)
{
    private const double ReminderShare = 0.9;
    private const double NoticeShare = 0.8;

    /// <summary>The time within which at most <see cref="SegmentsPerWindow"/> go: a second, or as long as one segment
    /// takes.</summary>
    public Duration Window => Duration.FromSeconds(Math.Max(1, 1 / SegmentsPerSecond));

    /// <summary>Segments to a window, 1 or more.</summary>
    public int SegmentsPerWindow => (int)Math.Max(1, SegmentsPerSecond);

    /// <summary>How much of a day's cap a class may bring it to. Notices stop at eight tenths, reminders at nine, and
    /// replies, for which farmers wait, at the whole.</summary>
    public static long ShareOf(long cap, Priority priority) => priority switch
    {
        Priority.Reply => cap,
        Priority.Reminder => (long)(cap * ReminderShare),
        _ => (long)(cap * NoticeShare),
    };

    /// <summary>The day an instant belongs to.</summary>
    public LocalDate DayOf(Instant now) => now.InZone(Zone).Date;

    /// <summary>When the day of an instant ends.</summary>
    public Instant NextDay(Instant now) => DayOf(now).PlusDays(1).AtStartOfDayInZone(Zone).ToInstant();
}

/// <summary>A message that asks to be sent.</summary>
/// <param name="Priority">Its class.</param>
/// <param name="Segments">What its text takes.</param>
public readonly record struct Load(Priority Priority, int Segments);

/// <summary>What a line may send now.</summary>
/// <param name="Granted">How many of the messages asked for may go, from the first; they are charged.</param>
/// <param name="Room">How many segments may go now beside those.</param>
/// <param name="Through">The last class of messages that the day's caps still let go; null when they let none.</param>
/// <param name="AskAgain">When there may be more room.</param>
public sealed record Allowance(int Granted, int Room, Priority? Through, Instant AskAgain);
