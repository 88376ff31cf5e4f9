using NodaTime;

namespace HeapText.Service.Workers;

/// <summary>Whether a line is to be left alone: it said it was busy, or did not answer.</summary>
/// <remarks>Counts on the monotonic clock, so a wall clock set back does not lengthen a rest.</remarks>
internal sealed class LineRest(Backoff backoff, TimeProvider time)
{
    /// <summary>The longest a line is left alone, whatever it asked for.</summary>
    public static readonly Duration Longest = Duration.FromHours(1);
    /// <summary>For how long a line is in trouble before it counts as failing.</summary>
    public static readonly Duration FailingAfter = Duration.FromMinutes(1);

    private const int TroublesOfFailing = 3;
    private readonly Lock _lock = new();
    private readonly long _start = time.GetTimestamp();
    private Duration _until = Duration.Zero;
    private int _troubles;
    private Duration _since;

    /// <summary>True while nothing may be sent.</summary>
    public bool IsResting
    {
        get
        {
            lock (_lock) return Elapsed() < _until;
        }
    }

    /// <summary>True after a trouble until the next answer: one message tries the line before the rest
    /// follow.</summary>
    public bool IsDoubtful
    {
        get
        {
            lock (_lock) return _troubles > 0;
        }
    }

    /// <summary>True when the line has been in trouble for more than a minute, and either is resting or met three
    /// troubles in a row.</summary>
    public bool IsFailing
    {
        get
        {
            lock (_lock)
                return _troubles > 0 && Elapsed() - _since > FailingAfter
                    && (_troubles >= TroublesOfFailing || Elapsed() < _until);
        }
    }

    /// <summary>How long it is still to be left alone.</summary>
    public Duration Left
    {
        get
        {
            lock (_lock) return Duration.Max(_until - Elapsed(), Duration.Zero);
        }
    }

    /// <summary>The line took or refused a message, so it is there.</summary>
    public void Answered()
    {
        lock (_lock) _troubles = 0;
    }

    /// <summary>The line is busy; returns how long to leave it alone, at most an hour.</summary>
    /// <param name="asked">How long it asked for; null when it did not say.</param>
    public Duration Busy(Duration? asked)
    {
        lock (_lock)
        {
            var now = Elapsed();
            // Messages that were under way together meet the same trouble: it counts once.
            var known = now < _until;
            if (_troubles == 0) _since = now;
            if (!known) _troubles++;
            if (asked is { } wait) _until = Duration.Max(_until, now + Duration.Min(wait, Longest));
            else if (!known) _until = now + backoff.After(_troubles);
            return Duration.Max(_until - now, Duration.Zero);
        }
    }

    private Duration Elapsed() => Duration.FromTimeSpan(time.GetElapsedTime(_start));
}
