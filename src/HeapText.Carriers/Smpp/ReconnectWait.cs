namespace HeapText.Carriers.Smpp;

/// <summary>How long to wait before connecting again: twice as long after each failure, up to a longest, each ± 20
/// %.</summary>
/// <remarks>The spread keeps the instances that one centre's restart cut off from coming back together.</remarks>
internal sealed class ReconnectWait(TimeSpan first, TimeSpan longest, Random random)
{
    private const double Spread = 0.2;
    private const int MostDoublings = 20;

    /// <summary>The wait after a number of failures in a row, 1 or more.</summary>
    public TimeSpan After(int failures)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(failures, 1);
        var grown = first.TotalSeconds * Math.Pow(2, Math.Min(failures - 1, MostDoublings));
        var seconds = Math.Min(longest.TotalSeconds, grown);
        lock (random) return TimeSpan.FromSeconds(seconds * (1 - Spread + (2 * Spread * random.NextDouble())));
    }
}
