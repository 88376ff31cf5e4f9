using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>What a line sent within its window, so that no second holds more than its rate.</summary>
/// <remarks>A bucket that fills with time would let through two seconds' worth within one: what it holds, and what
/// comes in meanwhile. Not safe for use side by side.</remarks>
internal sealed class RateWindow
{
    /// <summary>What lies further ahead than so many windows was charged by a clock set back since.</summary>
    public const int MostWindowsAhead = 100;

    private readonly List<(Instant At, int Segments)> _sent = [];

    /// <summary>Segments that may go now.</summary>
    public int Room(LineBudget budget, Instant now)
    {
        _sent.RemoveAll(one => one.At <= now - budget.Window || one.At > now + (budget.Window * MostWindowsAhead));
        return Math.Max(0, budget.SegmentsPerWindow - _sent.Sum(one => one.Segments));
    }

    /// <summary>Charges a message; false when it does not fit. One longer than a whole window fits an empty one, and
    /// takes the windows that follow.</summary>
    public bool Take(LineBudget budget, int segments, Instant now)
    {
        var room = Room(budget, now);
        if (segments > room && room < budget.SegmentsPerWindow) return false;
        for (var at = now; segments > 0; at += budget.Window)
        {
            _sent.Add((at, Math.Min(segments, budget.SegmentsPerWindow)));
            segments -= budget.SegmentsPerWindow;
        }
        return true;
    }

    /// <summary>When there is more room.</summary>
    public Instant AskAgain(LineBudget budget, Instant now) =>
        _sent.Count == 0 ? now : Instant.Max(now, _sent.Min(one => one.At) + budget.Window);
}
