namespace HeapText.Agronomy.Heap;

/// <summary>Where a heap stands between building and ready.</summary>
public enum HeapPhase
{
    /// <summary>Days 0 to 2: it need not be warm yet.</summary>
    Fresh,

    /// <summary>Days 3 to 5: it should be getting hot.</summary>
    Heating,

    /// <summary>Its hot weeks, with turnings.</summary>
    Hot,

    /// <summary>After the last turning, or long after one of the later ones: heat may go.</summary>
    Cooling,

    /// <summary>All turnings done, and settled since: it should not warm again.</summary>
    Curing,
}

/// <summary>Phase of a heap by its calendar.</summary>
/// <remarks>
/// <code>
/// age a [d], day of the last turning t [d], last planned turning T [d], settling s [d]
/// a ≤ 2                            Fresh
/// a ≤ 5                            Heating
/// t ≥ T  and  a ≥ t + s            Curing
/// t ≥ T  and  a > t                Cooling
/// a > 25  and  a > t + s           Cooling
/// else                             Hot
/// </code>
/// Heaps reach 40-50 degrees C in 2-3 days, 60-70 in 3-5 [CORNELLHEAT]; the longest hot time measured in four heaps was
/// 25 days [COFFEEHEAPS]; after settling, warming again means it is not done [REHEAT].
/// </remarks>
public static class HeapPhases
{
    private const int FreshDays = 2;
    private const int HeatingDays = 5;
    private const int LongestHotDays = 25;

    /// <summary>The phase; null when the age is not known.</summary>
    /// <param name="method">How it is turned.</param>
    /// <param name="ageDays">Since building, 0 or more. [d]</param>
    /// <param name="daysSinceTurn">Since the last turning, 0 or more [d]; null when not known, or never turned: then
    /// it counts as turned by the calendar. More than the age counts as never turned.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of days is negative.</exception>
    public static HeapPhase? Of(HeapMethod method, int? ageDays, int? daysSinceTurn)
    {
        if (ageDays is not { } age) return null;
        ArgumentOutOfRangeException.ThrowIfNegative(age, nameof(ageDays));
        if (age <= FreshDays) return HeapPhase.Fresh;
        if (age <= HeatingDays) return HeapPhase.Heating;
        var turned = LastTurnDay(method, age, daysSinceTurn);
        var isSettled = age >= turned + method.SettleDays;
        if (turned >= method.TurnDays[^1] && age > turned) return isSettled ? HeapPhase.Curing : HeapPhase.Cooling;
        return age > LongestHotDays && isSettled ? HeapPhase.Cooling : HeapPhase.Hot;
    }

    /// <summary>True when a planned turning falls on this day, or was missed before it.</summary>
    /// <param name="method">How it is turned.</param>
    /// <param name="ageDays">Since building, 0 or more. [d]</param>
    /// <param name="daysSinceTurn">Since the last turning [d]; null when not known: then only the day itself
    /// counts.</param>
    public static bool IsTurnDue(HeapMethod method, int? ageDays, int? daysSinceTurn) => (ageDays, daysSinceTurn) switch
    {
        (null, _) => false,
        ({ } age, null) => method.TurnDays.Contains(age),
        ({ } age, { } since) => method.TurnDays.Any(day => day <= age && day > age - since),
    };

    private static int LastTurnDay(HeapMethod method, int age, int? daysSinceTurn)
    {
        if (daysSinceTurn is { } days)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(days, nameof(daysSinceTurn));
            return Math.Max(0, age - days);
        }

        return method.TurnDays.LastOrDefault(day => day <= age);
    }
}
