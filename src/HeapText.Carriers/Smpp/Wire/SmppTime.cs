using System.Globalization;
using NodaTime;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>How a line writes moments.</summary>
public enum SmppTimeForm
{
    /// <summary>A time from now, by the peer's clock.</summary>
    Relative,

    /// <summary>A date and time in UTC.</summary>
    Absolute,
}

/// <summary>The standard's 16 characters for a moment: <c>YYMMDDhhmmsstnnp</c>.</summary>
/// <remarks>
/// Source: SMPP 3.4, section 7.1.1, from memory: t tenths of a second; nn quarters of an hour from UTC and p its sign;
/// or <c>000R</c> at the end for years, months, days, hours, minutes and seconds from now.
/// </remarks>
internal static class SmppTime
{
    // Months have no fixed length, so that none are written.
    private static readonly Duration Longest = Duration.FromDays(31) - Duration.FromSeconds(1);
    private static readonly Duration Shortest = Duration.FromSeconds(1);

    /// <summary>The validity_period of a message.</summary>
    /// <param name="expiresAt">After this moment it must not reach the phone; parts of a second are left out.</param>
    /// <param name="now">The moment of sending.</param>
    /// <param name="form">As the line wants it. A relative time is at least one second and less than 31 days.</param>
    public static string Validity(Instant expiresAt, Instant now, SmppTimeForm form)
    {
        if (form == SmppTimeForm.Absolute)
            return expiresAt.ToDateTimeUtc().ToString("yyMMddHHmmss", CultureInfo.InvariantCulture) + "000+";
        var left = Duration.Max(Shortest, Duration.Min(Longest, expiresAt - now));
        return string.Create(CultureInfo.InvariantCulture,
            $"0000{left.Days:00}{left.Hours:00}{left.Minutes:00}{left.Seconds:00}000R");
    }
}
