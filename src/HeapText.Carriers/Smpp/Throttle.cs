namespace HeapText.Carriers.Smpp;

/// <summary>How long a line is left alone after the centre said that it sends too fast.</summary>
/// <remarks>A quarter of a second at first, and twice as long as before each time that it is said again before fifty
/// messages were taken, up to a minute, each ± 20 %. Counts on the monotonic clock.</remarks>
internal sealed class Throttle(Random random, TimeProvider time)
{
    private const double FirstSeconds = 0.25, LongestSeconds = 60, Spread = 0.2;
    private const int MostDoublings = 10, Calm = 50;
    private readonly Lock _lock = new();
    private readonly long _start = time.GetTimestamp();
    private TimeSpan _until = TimeSpan.Zero;
    private int _times;
    private int _taken = Calm;

    /// <summary>What is left of the pause; null when messages may go.</summary>
    public TimeSpan? Left
    {
        get
        {
            lock (_lock)
            {
                var left = _until - time.GetElapsedTime(_start);
                return left > TimeSpan.Zero ? left : null;
            }
        }
    }

    /// <summary>The centre took a message.</summary>
    public void Took()
    {
        lock (_lock) _taken = Math.Min(_taken + 1, Calm);
    }

    /// <summary>The centre said so. Messages that were under way together are told together: it counts once.</summary>
    public void Slow()
    {
        lock (_lock)
        {
            var now = time.GetElapsedTime(_start);
            if (now < _until) return;
            _times = _taken < Calm ? Math.Min(_times + 1, MostDoublings) : 0;
            _taken = 0;
            var seconds = Math.Min(LongestSeconds, FirstSeconds * Math.Pow(2, _times));
            lock (random) seconds *= 1 - Spread + (2 * Spread * random.NextDouble());
            _until = now + TimeSpan.FromSeconds(seconds);
        }
    }
}
