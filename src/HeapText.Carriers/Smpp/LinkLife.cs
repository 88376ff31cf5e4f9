namespace HeapText.Carriers.Smpp;

/// <summary>What outlives one connection: which of our answers the peer surely got.</summary>
internal sealed class LinkLife
{
    private readonly Lock _lock = new();
    private long _written;
    private long _proven;
    private bool _isOver;

    /// <summary>Answers handed to the connection so far.</summary>
    public long Written
    {
        get
        {
            lock (_lock) return _written;
        }
    }

    /// <summary>True when the connection has ended.</summary>
    public bool IsOver
    {
        get
        {
            lock (_lock) return _isOver;
        }
    }

    /// <summary>One more answer was handed over; its number.</summary>
    public long Wrote()
    {
        lock (_lock) return ++_written;
    }

    /// <summary>The peer answered something that went after so many of our answers.</summary>
    public void Prove(long answers)
    {
        lock (_lock) _proven = Math.Max(_proven, answers);
    }

    /// <summary>The connection ended.</summary>
    public void End()
    {
        lock (_lock) _isOver = true;
    }

    /// <summary>True when the peer surely got the answer with this number.</summary>
    public bool IsProven(long answer)
    {
        lock (_lock) return answer <= _proven;
    }
}
