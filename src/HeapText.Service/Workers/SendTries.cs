namespace HeapText.Service.Workers;

/// <summary>Counts the failed sends of a line, and tells a message its gateway chokes on from a gateway that
/// fails.</summary>
/// <remarks>A failure is held against a message only when the line took another one since the message failed before:
/// while a line takes nothing, nothing is learnt about the message. Kept in memory: a restart counts anew.</remarks>
internal sealed class SendTries
{
    /// <summary>How many failures held against a message make it poison.</summary>
    public const int Most = 5;

    private const int MostKept = 10_000;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, (int All, int Held, long TakenThen)> _failed = new(StringComparer.Ordinal);
    private long _taken;

    /// <summary>The line took a message.</summary>
    public void Took()
    {
        lock (_lock) _taken++;
    }

    /// <summary>The message is over.</summary>
    public void Forget(string message)
    {
        lock (_lock) _failed.Remove(message);
    }

    /// <summary>Counts one more failure, and says how many there were in all, whether the message rather than the
    /// line is suspect, since others were taken after it had failed, and whether it is poison.</summary>
    public (int All, bool IsSuspect, bool IsPoison) Failed(string message)
    {
        lock (_lock)
        {
            if (_failed.Count >= MostKept) _failed.Clear();
            var (all, held, takenThen) = _failed.GetValueOrDefault(message, (0, 0, -1));
            if (_taken > takenThen) held++;
            _failed[message] = (all + 1, held, _taken);
            return (all + 1, held > 1, held >= Most);
        }
    }
}
