using System.Collections.Concurrent;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Store.Sqlite;

/// <summary>What lines may send. The rate is kept in memory, since one process owns the file and a second passes while
/// it starts; what a day has taken is kept in the file.</summary>
internal sealed class SpendingSteps
{
    private const string All = "";
    private readonly ConcurrentDictionary<string, RateWindow> _windows = new(StringComparer.Ordinal);

    /// <summary>What may go now of the messages asked for; charges it.</summary>
    public Allowance Allow(Session session, LineBudget budget, IReadOnlyList<Load> loads, Instant now)
    {
        var day = LocalDatePattern.Iso.Format(budget.DayOf(now));
        var (ofLine, ofAll) = (Spent(session, day, budget.Line), Spent(session, day, All));
        var window = _windows.GetOrAdd(budget.Line, static _ => new RateWindow());
        lock (window)
        {
            var granted = 0;
            var segments = 0L;
            while (granted < loads.Count && budget.Fits(loads[granted], ofLine + segments, ofAll + segments)
                && window.Take(budget, loads[granted].Segments, now))
                segments += loads[granted++].Segments;
            if (segments > 0) Charge(session, budget, day, segments, now);
            var through = budget.Through(ofLine + segments, ofAll + segments);
            return new Allowance(
                granted, window.Room(budget, now), through,
                through is null ? budget.NextDay(now) : window.AskAgain(budget, now));
        }
    }

    /// <summary>Takes segments off the counts of the day they were granted on; gives true.</summary>
    public static bool TakeOff(Session session, LineBudget budget, int segments, Instant granted)
    {
        var day = LocalDatePattern.Iso.Format(budget.DayOf(granted));
        session.Run(Tables.Spending.TakeOff, day, budget.Line, segments);
        session.Run(Tables.Spending.TakeOff, day, All, segments);
        return true;
    }

    private static long Spent(Session session, string day, string line) =>
        session.Scalar(Tables.Spending.Get, day, line) as long? ?? 0;

    private static void Charge(Session session, LineBudget budget, string day, long segments, Instant now)
    {
        session.Run(Tables.Spending.Add, day, budget.Line, segments);
        session.Run(Tables.Spending.Add, day, All, segments);
        session.Run(Tables.Spending.Trim, LocalDatePattern.Iso.Format(budget.DayOf(now).PlusDays(-1)));
    }
}
