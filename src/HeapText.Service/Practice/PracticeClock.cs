using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Practice;

/// <summary>The clock of practice mode: the real one plus an offset, or stopped at an instant while time is
/// moved.</summary>
/// <remarks>Timers and time stamps stay real, so workers keep polling while the clock stands.</remarks>
internal sealed class PracticeClock(TimeProvider real, Duration offset) : TimeProvider
{
    private readonly Lock _lock = new();
    private Duration _offset = offset;
    private Instant? _stopped;

    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => real.LocalTimeZone;

    /// <inheritdoc/>
    public override long TimestampFrequency => real.TimestampFrequency;

    /// <summary>What is added to the real time.</summary>
    public Duration Offset
    {
        get
        {
            lock (_lock) return _offset;
        }
    }

    /// <summary>The practice time.</summary>
    public Instant Now
    {
        get
        {
            lock (_lock) return _stopped ?? RealNow() + _offset;
        }
    }

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Now.ToDateTimeOffset();

    /// <inheritdoc/>
    public override long GetTimestamp() => real.GetTimestamp();

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        real.CreateTimer(callback, state, dueTime, period);

    /// <summary>Stops the clock at an instant, or moves the stopped clock there.</summary>
    public void StopAt(Instant instant)
    {
        lock (_lock)
        {
            _stopped = instant;
            _offset = instant - RealNow();
        }
    }

    /// <summary>Lets the clock run on from where it stands.</summary>
    public void Run()
    {
        lock (_lock)
        {
            if (_stopped is { } stopped) _offset = stopped - RealNow();
            _stopped = null;
        }
    }

    private Instant RealNow() => real.GetUtcNow().ToInstant();
}
