using System.Collections.Concurrent;

namespace HeapText.Service.Turns;

/// <summary>Wakes a line's sender as soon as there is something to send on it.</summary>
internal sealed class WorkSignals
{
    private readonly ConcurrentDictionary<string, SemaphoreSlim> _lines = new(StringComparer.Ordinal);

    /// <summary>Something waits to be sent on this line.</summary>
    public void ToSend(string line)
    {
        var signal = Of(line);
        try
        {
            if (signal.CurrentCount == 0) signal.Release();
        }
        catch (SemaphoreFullException)
        {
            // Another turn signalled in the same moment: one signal is enough.
        }
    }

    /// <summary>Waits for something to send, or for the pause to end.</summary>
    public async Task WaitToSend(string line, TimeSpan pause, TimeProvider time, CancellationToken cancel)
    {
        using var poll = new CancellationTokenSource(pause, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(poll.Token, cancel);
        try
        {
            await Of(line).WaitAsync(either.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            // The pause is over.
        }
    }

    private SemaphoreSlim Of(string line) => _lines.GetOrAdd(line, _ => new SemaphoreSlim(0, 1));
}
