using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Use;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>What the farmer's checks say of a heap's heat over the weeks.</summary>
internal static class HeapHeat
{
    /// <summary>Whether it was hot for long enough and turned often enough while it was.</summary>
    public static HygieneResult HygieneOf(HeapRecord heap, Rod? rod) => HygieneRule.Judge(new HygieneEvidence
    {
        Checks =
        [
            .. heap.Checks.Where(check => check.Heat is not null)
                .Select(check => new HeatOnDay(DayOf(heap, check.On), check.Heat!.Value)),
        ],
        TurnDays = [.. heap.TurnedOn.Select(on => DayOf(heap, on))],
        Rod = KindOf(rod),
        ForecastDaysAbove55 = heap.Outlook?.DaysAbove55,
    });

    /// <summary>The rod in the agronomy's words; null while it is not known.</summary>
    public static RodKind? KindOf(Rod? rod) => rod switch
    {
        Rod.Metal => RodKind.Metal,
        Rod.Wood => RodKind.Wood,
        _ => null,
    };

    /// <summary>Days after building.</summary>
    public static int DayOf(HeapRecord heap, LocalDate on) => DaysSince(heap.BuiltOn ?? on, on);

    /// <summary>Days from one to another; 0 where the first lies ahead, by a clock set back or a zone changed
    /// since.</summary>
    public static int DaysSince(LocalDate day, LocalDate today) => Math.Max(0, Period.DaysBetween(day, today));
}
