using NodaTime;

namespace HeapText.Service.Workers;

/// <summary>How long to wait before the next try: 5 s, then three times as long each time up to 15 min, each ± 20
/// %.</summary>
/// <remarks>The spread keeps many messages that failed together from coming back together.</remarks>
internal sealed class Backoff(Random random)
{
    private const double FirstSeconds = 5;
    private const double Growth = 3;
    private const double LongestSeconds = 900;
    private const double Spread = 0.2;
    private readonly Lock _lock = new();

    /// <summary>The wait after a number of failures in a row, 1 or more.</summary>
    public Duration After(int failures)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(failures, 1);
        var seconds = Math.Min(LongestSeconds, FirstSeconds * Math.Pow(Growth, Math.Min(failures - 1, 20)));
        lock (_lock) return Duration.FromSeconds(seconds * (1 - Spread + (2 * Spread * random.NextDouble())));
    }
}
