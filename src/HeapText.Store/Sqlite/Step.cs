namespace HeapText.Store.Sqlite;

/// <summary>One atomic piece of work for the writer, and the caller who waits for it.</summary>
internal abstract class Step
{
    private const int Waiting = 0, Started = 1, Abandoned = 2;
    private int _state;

    /// <summary>False when the caller no longer waits; then the step must not be run.</summary>
    public bool TryStart() => Interlocked.CompareExchange(ref _state, Started, Waiting) == Waiting;

    /// <summary>Keeps a step that has not begun from being run.</summary>
    public void Abandon() => Interlocked.CompareExchange(ref _state, Abandoned, Waiting);

    /// <summary>Does the work inside the open transaction. May be run again after a rollback.</summary>
    public abstract void Run(Session session);

    /// <summary>Tells the caller that the result is durable.</summary>
    public abstract void Complete();

    /// <summary>Tells the caller that nothing was done.</summary>
    public abstract void Fail(Exception fault);
}

/// <inheritdoc/>
internal sealed class Step<T>(Func<Session, T> work) : Step
{
    private readonly TaskCompletionSource<T> _done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T? _result;

    public Task<T> Done => _done.Task;

    public override void Run(Session session) => _result = work(session);

    public override void Complete() => _done.TrySetResult(_result!);

    public override void Fail(Exception fault) => _done.TrySetException(fault);
}
