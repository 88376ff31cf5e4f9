namespace HeapText.Service.Tests.Fakes;

/// <summary>A wall clock that can be set, over a monotonic one that cannot.</summary>
internal sealed class SteppedClock(TimeProvider steady) : TimeProvider
{
    /// <summary>By how much the wall clock was set.</summary>
    public TimeSpan SetBy { get; set; }

    public override long TimestampFrequency => steady.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => steady.GetUtcNow() + SetBy;

    public override long GetTimestamp() => steady.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        steady.CreateTimer(callback, state, dueTime, period);
}
