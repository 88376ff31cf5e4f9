namespace HeapText.Service.Workers;

/// <summary>Goes over its work again and again, one pass at a time, and rests when a pass found nothing.</summary>
internal abstract partial class PassWorker(TimeProvider time, ILogger logger) : BackgroundService
{
    /// <summary>The longest rest between two passes.</summary>
    protected static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private readonly SemaphoreSlim _pass = new(1, 1);

    /// <summary>One pass over what may be done now; returns how much was taken.</summary>
    public async Task<int> RunOnce(CancellationToken cancel)
    {
        await _pass.WaitAsync(cancel);
        try
        {
            return await Pass(cancel);
        }
        finally
        {
            _pass.Release();
        }
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _pass.Dispose();
        base.Dispose();
    }

    /// <summary>The work of one pass. What it takes it finishes even while stopping.</summary>
    protected abstract Task<int> Pass(CancellationToken cancel);

    /// <summary>Waits for more work, at most for <see cref="Pause"/>.</summary>
    protected virtual Task Rest(CancellationToken cancel) => Task.Delay(Pause, time, cancel);

    /// <inheritdoc/>
    protected sealed override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (await RunOnce(stoppingToken) == 0) await Rest(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                LogPassFailed(fault, GetType().Name);
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    [LoggerMessage(200, LogLevel.Error, "A pass of {Worker} failed; it is tried again in a second.")]
    private partial void LogPassFailed(Exception fault, string worker);
}
