using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>The requests of one connection that wait for their answer, at most so many at once.</summary>
/// <remarks>One that was given up still has its number kept, so that a late answer is not lost; its place in the window
/// is free again.</remarks>
internal sealed class RequestWindow(int size, TimeProvider time) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly SemaphoreSlim _slots = new(size, size);
    private readonly Dictionary<uint, PendingRequest> _open = [];
    private readonly CancellationTokenSource _closing = new();
    private uint _sequence;
    private int _late;
    private int _waiting;
    private bool _isClosed;

    /// <summary>True when the peer owes as many late answers as the window holds: it is not working.</summary>
    public bool IsOwedTooMuch
    {
        get
        {
            lock (_lock) return _late >= size;
        }
    }

    /// <summary>True when no request waits in time for its answer.</summary>
    public bool IsIdle => Volatile.Read(ref _waiting) == 0;

    /// <summary>Waits for a place in the window; null when the connection ended first.</summary>
    public async ValueTask<PendingRequest?> Enter(Func<long> answersBefore, CancellationToken cancel)
    {
        try
        {
            if (!_slots.Wait(0, cancel))
            {
                using var either = CancellationTokenSource.CreateLinkedTokenSource(cancel, _closing.Token);
                await _slots.WaitAsync(either.Token);
            }
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return null;
        }
        catch (ObjectDisposedException)
        {
            // The connection ended, and is gone already.
            return null;
        }

        return Add(takesSlot: true, answersBefore());
    }

    /// <summary>A request outside the window: bind, enquire_link, unbind; null when the connection ended.</summary>
    public PendingRequest? EnterBeside(long answersBefore) => Add(takesSlot: false, answersBefore);

    /// <summary>The peer's answer; null when it can not be read. The request answered; null when none waits.</summary>
    public PendingRequest? Answer(uint sequence, Pdu? answer)
    {
        PendingRequest? request;
        lock (_lock)
        {
            if (!_open.Remove(sequence, out request)) return null;
            if (request is { TakesSlot: true, IsLate: true }) _late--;
            else if (request.TakesSlot) Free();
        }

        request.Complete(answer);
        return request;
    }

    /// <summary>Waits for an answer.</summary>
    /// <returns>The answer; null when the link was lost or the time ran out, so that the outcome is unknown. A late one
    /// still ends <see cref="PendingRequest.End"/>.</returns>
    public async ValueTask<Pdu?> Wait(PendingRequest request, TimeSpan timeout, CancellationToken cancel)
    {
        try
        {
            return await request.End.WaitAsync(timeout, time, cancel);
        }
        catch (TimeoutException)
        {
            GiveUp(request);
            return null;
        }
        catch (OperationCanceledException)
        {
            GiveUp(request);
            throw;
        }
    }

    /// <summary>The connection ended: every outcome is unknown.</summary>
    public void Close()
    {
        List<PendingRequest> left;
        lock (_lock)
        {
            if (_isClosed) return;
            _isClosed = true;
            left = [.. _open.Values];
            _open.Clear();
        }

        foreach (var request in left) request.Complete(null);
        _closing.Cancel();
    }

    // The semaphore is left to the collector: disposed, it would forget who waits for it, and they would wait for ever.
    public void Dispose()
    {
        Close();
        _closing.Dispose();
    }

    private PendingRequest? Add(bool takesSlot, long answersBefore)
    {
        lock (_lock)
        {
            if (_isClosed) return null;
            do _sequence = _sequence >= Pdu.LastSequence ? 1 : _sequence + 1;
            while (_open.ContainsKey(_sequence));
            if (takesSlot) _waiting++;
            return _open[_sequence] = new PendingRequest(_sequence, takesSlot, answersBefore);
        }
    }

    private void GiveUp(PendingRequest request)
    {
        lock (_lock)
        {
            if (!_open.ContainsKey(request.Sequence)) return;
            request.IsLate = true;
            if (!request.TakesSlot) return;
            _late++;
            Free();
        }
    }

    private void Free()
    {
        _waiting--;
        _slots.Release();
    }
}
