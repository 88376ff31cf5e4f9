namespace HeapText.Simulator.Tests.Running;

/// <summary>A worker that found nothing to do and looks again after a while.</summary>
internal sealed class Sleeper(Instance instance, bool sends)
{
    public static readonly long Shortest = TimeSpan.TicksPerSecond;

    /// <summary>Longer than the service's, to save looks that find nothing.</summary>
    private static readonly long Longest = 20 * TimeSpan.TicksPerSecond;

    private TaskCompletionSource _woken = new();

    public Instance Instance => instance;

    /// <summary>True for one that sends, false for one that wakes who is due.</summary>
    public bool Sends => sends;

    /// <summary>How long it rests at least. [ticks]</summary>
    public long Rest { get; set; } = Shortest;

    /// <summary>Not woken before. [ticks since the start]</summary>
    public long Until { get; set; }

    public Task Sleep(List<Sleeper> sleepers, long now)
    {
        Until = now + Rest;
        Rest = Math.Min(Rest * 2, Longest);
        _woken = new TaskCompletionSource();
        sleepers.Add(this);
        return _woken.Task;
    }

    public void Wake() => _woken.SetResult();
}
