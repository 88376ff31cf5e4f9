namespace HeapText.Service.Workers;

/// <summary>Notices a wall clock that was set back, by the monotonic one.</summary>
internal sealed class ClockWatch(TimeProvider time)
{
    private static readonly TimeSpan Tolerance = TimeSpan.FromSeconds(10);
    private DateTimeOffset _wall = time.GetUtcNow();
    private long _stamp = time.GetTimestamp();

    /// <summary>Whether the clock was set back, by more than ten seconds, since this was asked before.</summary>
    public bool WasSetBack()
    {
        var (wall, stamp) = (time.GetUtcNow(), time.GetTimestamp());
        var back = time.GetElapsedTime(_stamp, stamp) - (wall - _wall);
        (_wall, _stamp) = (wall, stamp);
        return back > Tolerance;
    }
}
