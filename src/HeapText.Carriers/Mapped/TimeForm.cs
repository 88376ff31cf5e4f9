using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Carriers.Mapped;

/// <summary>How a gateway writes times.</summary>
public sealed class TimeForm
{
    private static readonly Dictionary<string, TimeForm> Named = new(StringComparer.Ordinal)
    {
        ["rfc3339"] = new(text => OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: var at }
            && IsPlausible(at.Year) ? at.ToInstant() : null),
        ["unix-seconds"] = new(text => Whole(text) is { } seconds and >= 0 and < MostSeconds
            ? Instant.FromUnixTimeSeconds(seconds) : null),
        ["unix-milliseconds"] = new(text => Whole(text) is { } milliseconds and >= 0 and < MostSeconds * 1000
            ? Instant.FromUnixTimeMilliseconds(milliseconds) : null),
    };

    private const long MostSeconds = 253_402_300_800; // the end of the year 9999
    private const int FirstYear = 1970, LastYear = 9998; // beyond, an offset may lead to where no instant is
    private const string PatternMark = "pattern:";
    private readonly Func<string, Instant?> _read;

    private TimeForm(Func<string, Instant?> read) => _read = read;

    /// <summary>Times as in RFC 3339, like 2026-03-02T07:00:00+03:00.</summary>
    public static TimeForm Rfc3339 => Named["rfc3339"];

    /// <summary>Reads a form; null when it is none, with what to write.</summary>
    /// <param name="text">rfc3339, unix-seconds, unix-milliseconds, or "pattern:" and a pattern of local time.</param>
    /// <param name="zone">Where a pattern's times are local; null for UTC.</param>
    /// <param name="fault">What is wrong and what to write.</param>
    public static TimeForm? Parse(string text, DateTimeZone? zone, out string fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = $"is no form of time; write one of {string.Join(", ", Named.Keys)} or pattern:yyyy-MM-dd HH:mm:ss";
        if (!text.StartsWith(PatternMark, StringComparison.Ordinal)) return Named.GetValueOrDefault(text);
        try
        {
            var pattern = LocalDateTimePattern.CreateWithInvariantCulture(text[PatternMark.Length..]);
            return new TimeForm(time => pattern.Parse(time) is { Success: true, Value: var local }
                && IsPlausible(local.Year) ? local.InZoneLeniently(zone ?? DateTimeZone.Utc).ToInstant() : null);
        }
        catch (InvalidPatternException)
        {
            return null;
        }
    }

    /// <summary>Reads a time; null when it is none.</summary>
    public Instant? Read(string text) => _read(text.Trim());

    private static bool IsPlausible(int year) => year is >= FirstYear and <= LastYear;

    private static long? Whole(string text) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
