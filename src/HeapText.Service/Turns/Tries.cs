using System.Collections.Concurrent;

namespace HeapText.Service.Turns;

/// <summary>Counts how often a thing went wrong, so that a poison one is set aside instead of tried for ever.</summary>
/// <remarks>Kept in memory: a restart counts anew, which bounds the tries of one run.</remarks>
internal sealed class Tries
{
    private const int Most = 5;
    private const int MostKept = 10_000;
    private readonly ConcurrentDictionary<string, int> _failed = new(StringComparer.Ordinal);

    /// <summary>Counts one more failure; true when it was the last one allowed.</summary>
    public bool FailedForGood(string key)
    {
        if (_failed.Count >= MostKept) _failed.Clear();
        if (_failed.AddOrUpdate(key, 1, (_, failed) => failed + 1) < Most) return false;
        Forget(key);
        return true;
    }

    /// <summary>It went well, or is over.</summary>
    public void Forget(string key)
    {
        // Nearly always nothing failed, and looking takes no lock.
        if (_failed.ContainsKey(key)) _failed.TryRemove(key, out _);
    }
}
