using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;
using NodaTime.Text;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>What lines may send, shared by all instances.</summary>
internal sealed class RedisSpending(IDatabase database, Keys keys)
{
    /// <summary>What may go now of the messages asked for; charges it.</summary>
    public async Task<Allowance> Allow(LineBudget budget, IReadOnlyList<Load> loads, Instant now)
    {
        var day = LocalDatePattern.Iso.Format(budget.DayOf(now));
        var result = await Script.Allow.Run(
            database, [keys.Rate(budget.Line), keys.Spending(budget.Line, day), keys.Spending("", day)],
            [Millis.Now(now), Window(budget), budget.SegmentsPerWindow, RateWindow.MostWindowsAhead,
             (long)Keys.SpendingLifetime.TotalMilliseconds, .. Shares(budget.SegmentsPerDay),
             .. Shares(budget.SegmentsPerDayOfAll),
             .. loads.SelectMany(load => new RedisValue[] { (int)load.Priority, load.Segments })]);
        var (granted, room, through, askAgain) = ((int)result[0], (int)result[1], (int)result[2], (long)result[3]);
        return new Allowance(
            granted, room, through < 0 ? null : (Priority)through,
            through < 0 ? budget.NextDay(now) : Instant.FromUnixTimeMilliseconds(askAgain));
    }

    /// <summary>Takes segments off the counts of the day they were granted on.</summary>
    public Task<RedisResult> TakeOff(LineBudget budget, int segments, Instant granted)
    {
        var day = LocalDatePattern.Iso.Format(budget.DayOf(granted));
        return Script.TakeOff.Run(database, [keys.Spending(budget.Line, day), keys.Spending("", day)], [segments]);
    }

    private static long Window(LineBudget budget) => (long)Math.Ceiling(budget.Window.TotalMilliseconds);

    /// <summary>What each class may bring a cap to; -1 where there is none.</summary>
    private static IEnumerable<RedisValue> Shares(long? cap) => Enum.GetValues<Priority>().Select(
        priority => (RedisValue)(cap is { } most ? LineBudget.ShareOf(most, priority) : -1));
}
