using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Use;

/// <summary>Judges the heat of a heap by the published rule for turned heaps.</summary>
/// <remarks>
/// Likely: 55 degrees or more on 15 days, with 5 turnings in that time [PFRP]. Partly: a week above 50 [WHO2006] or 46
/// degrees [FEACHEM], from memory, and a turning, as the outside stays cool. A rod cannot measure: bands of touch are
/// derived from contact temperatures (compost 52-60 where a metal rod must be let go), so the best answer is likely.
/// Chosen: days between two hot checks count when these lie 4 days apart or less; of several checks in one day the
/// coolest counts; a wooden rod reaches likely only where a forecast gives the degrees; a forecast alone never does;
/// fewer than 3 checks, or gaps between hot checks that could hold a week, leave it unknown.
/// </remarks>
public static class HygieneRule
{
    /// <summary>Days at 55 degrees that the rule wants. [PFRP], [d]</summary>
    public const int DaysWanted = 15;

    /// <summary>Turnings in that time that the rule wants. [PFRP]</summary>
    public const int TurningsWanted = 5;

    /// <summary>Days of heat that count for something. [WHO2006], from memory. [d]</summary>
    public const int DaysForPart = 7;

    /// <summary>Two hot checks further apart say nothing of the days between. [d] Chosen.</summary>
    private const int LongestGap = 4;

    /// <summary>Fewer checks say nothing against a heap. Chosen.</summary>
    private const int FewestChecks = 3;

    /// <summary>Judges a heap.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Days of a forecast that are negative or no number.</exception>
    public static HygieneResult Judge(HygieneEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var forecast = evidence.ForecastDaysAbove55;
        if (forecast is not (null or >= 0))
            throw new ArgumentOutOfRangeException(nameof(evidence), forecast, "Forecast days must be 0 or more.");

        return evidence.Checks.Count == 0 ? ByForecast(evidence) : ByChecks(evidence);
    }

    private static HygieneResult ByForecast(HygieneEvidence evidence)
    {
        var turnings = evidence.TurnDays.Distinct().Count();
        if (evidence.ForecastDaysAbove55 is not { } forecast) return new(Hygiene.Unknown, 0, turnings);
        var days = (int)Math.Min(forecast, int.MaxValue);
        return new(days >= DaysForPart && turnings > 0 ? Hygiene.Partly : Hygiene.Unlikely, days, turnings);
    }

    private static HygieneResult ByChecks(HygieneEvidence evidence)
    {
        var spell = HotSpell.Of(evidence.Checks, LongestGap);
        var turnings = evidence.TurnDays.Distinct().Count(spell.Holds);
        var at55 = evidence.Rod == RodKind.Metal
            ? spell.Days
            : Math.Min(spell.Days, evidence.ForecastDaysAbove55 ?? 0);
        var verdict = at55 >= DaysWanted && turnings >= TurningsWanted ? Hygiene.Likely
            : spell.Days >= DaysForPart ? (turnings > 0 ? Hygiene.Partly : Hygiene.Unlikely)
            : spell.MostDays >= DaysForPart || evidence.Checks.Count < FewestChecks ? Hygiene.Unknown
            : Hygiene.Unlikely;
        return new(verdict, spell.Days, turnings);
    }

    /// <summary>Days on which a heap was hot, first and last, and how many more it may have been.</summary>
    private readonly record struct HotSpell(int First, int Last, int Days, int MostDays)
    {
        public static HotSpell Of(IEnumerable<HeatOnDay> checks, int longestGap)
        {
            var spell = new HotSpell(0, -1, 0, 0);
            int? hotBefore = null;
            foreach (var (day, heat) in checks.GroupBy(check => check.Day).OrderBy(same => same.Key)
                .Select(same => new HeatOnDay(same.Key, same.Max(check => check.Heat))))
            {
                if (heat != Heat.Hot)
                {
                    hotBefore = null;
                    continue;
                }

                var gap = day - (hotBefore ?? day - 1);
                spell = new HotSpell(
                    spell.Days == 0 ? day : spell.First, day,
                    spell.Days + (gap <= longestGap ? gap : 1), spell.MostDays + gap);
                hotBefore = day;
            }

            return spell;
        }

        public bool Holds(int day) => day >= First && day <= Last;
    }
}
