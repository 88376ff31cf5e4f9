using HeapText.Dialog.Ports;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>Claims farmers who are due, in batches, and takes their turns.</summary>
internal sealed partial class DueWorker(IStore store, TurnRunner turns, TimeProvider time, ILogger<DueWorker> logger)
    : PassWorker(time, logger)
{
    private const int Batch = 256;
    private const int AtOnce = 64;
    private static readonly Duration Lease = Duration.FromSeconds(30);
    private readonly TimeProvider _time = time;
    private readonly ILogger _logger = logger;

    /// <inheritdoc/>
    protected override async Task<int> Pass(CancellationToken cancel)
    {
        // Never given up half way: whoever was claimed unheard would wait for the claim to end.
        var due = await store.ClaimDue(_time.GetUtcNow().ToInstant(), Lease, Batch, CancellationToken.None);
        // On the scheduler that runs the pass: the simulator's, where all goes on in one thread.
        var atOnce = new ParallelOptions { MaxDegreeOfParallelism = AtOnce, TaskScheduler = TaskScheduler.Current };
        await Parallel.ForEachAsync(due, atOnce, async (farmer, _) => await Wake(farmer));
        return due.Count;
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

    [LoggerMessage(201, LogLevel.Warning, "The store did not take a due turn; it is claimed again.")]
    private partial void LogWakePutOff(Exception fault);
}
