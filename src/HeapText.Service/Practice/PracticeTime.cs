using HeapText.Dialog.Ports;
using HeapText.Service.Hooks;
using HeapText.Service.Workers;
using NodaTime;

namespace HeapText.Service.Practice;

/// <summary>Moves the practice clock, stopping at each instant at which something falls due.</summary>
internal sealed class PracticeTime(
    PracticeClock clock, PracticeJournal journal, IStore store, DueWorker due,
    [FromKeyedServices(InboundLine.Practice)] SenderWorker sender)
    : IDisposable
{
    // What is late and still not done (a failing item under claim) must not hold the clock for ever.
    private static readonly Duration StepPastLateWork = Duration.FromHours(1);
    private readonly SemaphoreSlim _moving = new(1, 1);

    /// <summary>Moves the clock on, and returns once everything due on the way is done and sent.</summary>
    public async Task Advance(Duration by, CancellationToken cancel)
    {
        await _moving.WaitAsync(cancel);
        try
        {
            await MoveTo(clock.Now + by, isKept: true, cancel);
        }
        finally
        {
            clock.Run();
            _moving.Release();
        }
    }

    /// <summary>When something falls due next, once all that is due now is done; null when nothing waits.</summary>
    public async Task<Instant?> Next(CancellationToken cancel)
    {
        await _moving.WaitAsync(cancel);
        try
        {
            // Otherwise a message just being sent would count as something to come.
            await RunDue(cancel);
            return await store.NextWake(cancel);
        }
        finally
        {
            _moving.Release();
        }
    }

    /// <summary>Runs a story from an instant on: each cue at its time, what falls due in between; then back to
    /// now.</summary>
    public async Task Play(IReadOnlyList<(Instant At, Func<Task> Cue)> cues, CancellationToken cancel)
    {
        await _moving.WaitAsync(cancel);
        var now = clock.Now;
        try
        {
            if (cues.Count > 0) clock.StopAt(cues[0].At);
            foreach (var (at, cue) in cues)
            {
                await MoveTo(at, isKept: false, cancel);
                await cue();
                await RunDue(cancel);
            }

            await MoveTo(now, isKept: false, cancel);
        }
        finally
        {
            clock.Run();
            _moving.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _moving.Dispose();

    // A story that is cut short must not leave the kept clock in the past.
    private async Task MoveTo(Instant target, bool isKept, CancellationToken cancel)
    {
        await Stop(Instant.Min(clock.Now, target), isKept);
        while (true)
        {
            await RunDue(cancel);
            if (await store.NextWake(cancel) is not { } next || next > target) break;
            await Stop(next > clock.Now ? next : Instant.Min(target, clock.Now + StepPastLateWork), isKept);
            if (next <= clock.Now && clock.Now == target) break;
        }

        await Stop(target, isKept);
        await RunDue(cancel);
    }

    private async Task Stop(Instant at, bool isKept)
    {
        clock.StopAt(at);
        if (isKept) await journal.KeepOffset(clock.Offset);
    }

    private async Task RunDue(CancellationToken cancel)
    {
        while (await due.RunOnce(cancel) + await sender.RunOnce(cancel) > 0)
        {
            // A turn may say something, and a message sent may let the next of that farmer follow.
        }
    }
}
