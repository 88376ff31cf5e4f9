using NodaTime;

namespace HeapText.Store.Records;

/// <summary>Instants as both homes order them: whole milliseconds since 1970-01-01T00:00Z, never before it.</summary>
/// <remarks>Moments to wait for are rounded up and the present down, so that nothing comes early.</remarks>
internal static class Millis
{
    /// <summary>The first whole millisecond at or after a moment to wait for.</summary>
    public static long Until(Instant moment)
    {
        var whole = moment.ToUnixTimeMilliseconds();
        return Math.Max(0, Instant.FromUnixTimeMilliseconds(whole) < moment ? whole + 1 : whole);
    }

    /// <summary>The last whole millisecond at or before the present.</summary>
    public static long Now(Instant now) => Math.Max(0, now.ToUnixTimeMilliseconds());
}
