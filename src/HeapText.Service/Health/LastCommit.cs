namespace HeapText.Service.Health;

/// <summary>Whether the store kept the text that came last. A store that is full or locked can still be read, so
/// reading it does not tell.</summary>
internal sealed class LastCommit(TimeProvider time)
{
    // After this without a text nothing is known any more, and only another text can tell.
    private static readonly TimeSpan Remembered = TimeSpan.FromSeconds(30);
    private readonly Lock _lock = new();
    private long? _failedAt;

    /// <summary>True when the last text was not kept, and not long ago.</summary>
    public bool HasFailed
    {
        get
        {
            lock (_lock) return _failedAt is { } at && time.GetElapsedTime(at) < Remembered;
        }
    }

    /// <summary>A text was kept.</summary>
    public void Succeeded()
    {
        lock (_lock) _failedAt = null;
    }

    /// <summary>A text could not be kept.</summary>
    public void Failed()
    {
        lock (_lock) _failedAt = time.GetTimestamp();
    }
}
