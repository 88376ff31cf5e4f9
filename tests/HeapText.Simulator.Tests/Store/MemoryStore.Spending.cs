using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Simulator.Tests.Store;

/// <summary>What lines may send.</summary>
internal sealed partial class MemoryStore
{
    private const string AllLines = "";

    public ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var day = budget.DayOf(now);
            var window = home.WindowOf(budget.Line);
            var (granted, segments) = (0, 0L);
            var (ofLine, ofAll) = (home.Spent(day, budget.Line), home.Spent(day, AllLines));
            while (granted < loads.Count && budget.Fits(loads[granted], ofLine + segments, ofAll + segments)
                && window.Take(budget, loads[granted].Segments, now))
                segments += loads[granted++].Segments;
            home.Spend(day, budget.Line, segments);
            home.Spend(day, AllLines, segments);
            var through = budget.Through(ofLine + segments, ofAll + segments);
            return new(new Allowance(
                granted, window.Room(budget, now), through,
                through is null ? budget.NextDay(now) : window.AskAgain(budget, now)));
        }
    }

    public ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        lock (home.Lock)
        {
            var day = budget.DayOf(granted);
            home.Spend(day, budget.Line, -segments);
            home.Spend(day, AllLines, -segments);
            return ValueTask.CompletedTask;
        }
    }
}
