using System.Threading.Channels;
using HeapText.Dialog.Ports;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;

namespace HeapText.Store.Sqlite;

/// <summary>The one thread that writes. Steps that wait together share a transaction, and so a flush to
/// disk.</summary>
/// <remarks>
/// A step whose caller gave up before it began is dropped. One that had begun may still become durable after its
/// caller was told the store is unavailable: a caller who tries again then finds its effect (a duplicate or a
/// conflict).
/// </remarks>
internal sealed partial class SqliteWriter : IAsyncDisposable
{
    /// <summary>Steps to a transaction, at most.</summary>
    public const int MostTogether = 512;

    /// <summary>Steps that may wait; more are refused.</summary>
    public const int QueueLimit = 8_192;

    private readonly Session _session;
    private readonly ILogger _logger;
    private readonly Channel<Step> _queue;
    private readonly Task _loop;

    public SqliteWriter(Session session, ILogger logger, int queueLimit = QueueLimit)
    {
        _session = session;
        _logger = logger;
        _queue = Channel.CreateBounded<Step>(new BoundedChannelOptions(queueLimit) { SingleReader = true });
        _loop = Task.Factory.StartNew(
            Loop, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>Steps that have not begun.</summary>
    public int Waiting => _queue.Reader.Count;

    /// <summary>Takes a step and completes when it is durable.</summary>
    /// <exception cref="StoreUnavailableException">Too many steps wait, the disk refuses, or the time is
    /// up.</exception>
    public async ValueTask<T> Do<T>(Func<Session, T> work, CancellationToken cancel)
    {
        var step = new Step<T>(work);
        if (!_queue.Writer.TryWrite(step)) throw new StoreUnavailableException("The store is busy or closed.");
        try
        {
            return await step.Done.WaitAsync(StepLimit.Time, cancel).ConfigureAwait(false);
        }
        catch (TimeoutException e)
        {
            step.Abandon();
            throw new StoreUnavailableException("The store did not take the step in time.", e);
        }
        catch (OperationCanceledException)
        {
            step.Abandon();
            throw;
        }
    }

    /// <summary>Finishes what waits, then stops.</summary>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _loop.ConfigureAwait(false);
        _session.Dispose();
    }

    private void Loop()
    {
        var steps = new List<Step>(MostTogether);
        while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            steps.Clear();
            while (steps.Count < MostTogether && _queue.Reader.TryRead(out var step))
                if (step.TryStart()) steps.Add(step);
            while (steps.Count > 0 && !Transact(steps)) { }
            foreach (var step in steps) step.Complete();
        }
    }

    /// <summary>Runs the steps in one transaction. False: the one that failed was taken out, and the rest, undone,
    /// are to be run again.</summary>
    private bool Transact(List<Step> steps)
    {
        var running = -1;
        try
        {
            _session.Run("BEGIN IMMEDIATE");
            for (running = 0; running < steps.Count; running++) steps[running].Run(_session);
            _session.Run("COMMIT");
            return true;
        }
        catch (Exception e) when (running >= 0 && running < steps.Count && IsOfTheStep(e))
        {
            UndoQuietly();
            steps[running].Fail(e);
            steps.RemoveAt(running);
        }
        catch (Exception e)
        {
            LogTransactionFailed(e, steps.Count);
            UndoQuietly();
            foreach (var step in steps)
                step.Fail(new StoreUnavailableException("The store could not write to its file.", e));
            steps.Clear();
        }
        return false;
    }

    /// <summary>Whether one step is at fault, rather than the disk or the file.</summary>
    private static bool IsOfTheStep(Exception fault) => fault is not SqliteException failed
        || failed.SqliteErrorCode is SQLitePCL.raw.SQLITE_ERROR or SQLitePCL.raw.SQLITE_TOOBIG
            or SQLitePCL.raw.SQLITE_CONSTRAINT or SQLitePCL.raw.SQLITE_MISMATCH;

    private void UndoQuietly()
    {
        try
        {
            _session.RollBack();
        }
        catch (SqliteException e)
        {
            LogRollbackFailed(e);
        }
    }

    [LoggerMessage(4001, LogLevel.Error, "A transaction of {Steps} steps failed; their callers will try again")]
    private partial void LogTransactionFailed(Exception fault, int steps);

    [LoggerMessage(4002, LogLevel.Error, "A failed transaction could not be rolled back")]
    private partial void LogRollbackFailed(Exception fault);
}
