namespace HeapText.Simulator.Tests.Running;

/// <summary>What is to happen when, on a clock that only goes forward, and a wall clock that may be set.</summary>
internal sealed class Timeline(DateTimeOffset start)
{
    private readonly PriorityQueue<Action, (long At, long Order)> _coming = new();
    private long _order;

    /// <summary>Time passed since the start. [ticks of 100 ns]</summary>
    public long Elapsed { get; private set; }

    /// <summary>By how much the wall clock was set. [ticks]</summary>
    public long SetBy { get; set; }

    public DateTimeOffset Wall => start.AddTicks(Elapsed + SetBy);

    /// <summary>When the next thing happens; null when nothing is to come. [ticks]</summary>
    public long? Next => _coming.TryPeek(out _, out var first) ? first.At : null;

    public void After(TimeSpan delay, Action what) => At(Elapsed + delay.Ticks, what);

    public void At(long elapsed, Action what) => _coming.Enqueue(what, (Math.Max(elapsed, Elapsed), ++_order));

    /// <summary>Lets time pass.</summary>
    public void PassTo(long elapsed) => Elapsed = Math.Max(Elapsed, elapsed);

    /// <summary>Does the next thing if its time has come; false when it has not.</summary>
    public bool DoNext()
    {
        if (!(Next <= Elapsed)) return false;
        _coming.Dequeue()();
        return true;
    }
}
