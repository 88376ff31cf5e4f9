using HeapText.Dialog.Ports;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>Claims farmers who are due, in batches, and takes their turns.</summary>
internal sealed partial class DueWorker(IStore store, TurnRunner turns, TimeProvider time, ILogger<DueWorker> logger)
    : BackgroundService
{
    private const int Batch = 256;
    private const int AtOnce = 64;
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly Duration Lease = Duration.FromSeconds(30);
    private readonly SemaphoreSlim _pass = new(1, 1);

    /// <summary>One pass over what is due now; returns how many farmers were claimed.</summary>
    public async Task<int> RunOnce(CancellationToken cancel)
    {
        await _pass.WaitAsync(cancel);
        try
        {
            var due = await store.ClaimDue(time.GetUtcNow().ToInstant(), Lease, Batch, cancel);
            // What is claimed is finished even while stopping, so that nobody waits for the claim to run out.
            await Parallel.ForEachAsync(due, new ParallelOptions { MaxDegreeOfParallelism = AtOnce },
                async (farmer, _) => await Wake(farmer));
            return due.Count;
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

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (await RunOnce(stoppingToken) == 0) await Task.Delay(Pause, time, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                LogPassFailed(fault);
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task Wake(FarmerKey farmer)
    {
        try
        {
            await turns.Wake(farmer, CancellationToken.None);
        }
        catch (StoreUnavailableException fault)
        {
            LogWakePutOff(fault);
        }
    }

    [LoggerMessage(200, LogLevel.Error, "Due work could not be taken; it is tried again in a second.")]
    private partial void LogPassFailed(Exception fault);

    [LoggerMessage(201, LogLevel.Warning, "The store did not take a due turn; it is claimed again.")]
    private partial void LogWakePutOff(Exception fault);
}
