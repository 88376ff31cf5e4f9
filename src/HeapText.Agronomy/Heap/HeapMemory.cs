namespace HeapText.Agronomy.Heap;

/// <summary>What was done lately on a heap, and what it leaves to ask for.</summary>
/// <remarks>
/// A step is not asked again before it can have worked. Days of rest: chosen, since heaps warm again 2 to 3 days after
/// building or feeding [CORNELLHEAT]. Within ten days after that, the same complaint again counts as the second:
/// chosen.
/// </remarks>
internal sealed class HeapMemory
{
    private const int ComplaintDays = 10;

    private static readonly (HeapSteps Step, int RestDays)[] Rests =
    [
        (HeapSteps.Turn, 1), (HeapSteps.Water, 1), (HeapSteps.Dry, 2), (HeapSteps.Brown, 2), (HeapSteps.Feed, 3),
        (HeapSteps.Size, 3), (HeapSteps.Soil, 2), (HeapSteps.Roof, 3), (HeapSteps.Drain, 3), (HeapSteps.Food, 2),
        (HeapSteps.Look, 1), (HeapSteps.Test, 7),
    ];

    private readonly DiagnosisInput _input;

    internal HeapMemory(DiagnosisInput input)
    {
        _input = input;
        Resting = Rests.Where(rest => DaysSince(rest.Step) <= rest.RestDays)
            .Aggregate(HeapSteps.None, (steps, rest) => steps | rest.Step);
        TurnIsDue = input is { IsTurnDue: true, Phase: not HeapPhase.Curing } && DaysSince(HeapSteps.Turn) is not 0;
        if (TurnIsDue) Resting &= ~HeapSteps.Turn;
    }

    /// <summary>True when the planned turning is wanted today.</summary>
    internal bool TurnIsDue { get; }

    /// <summary>Steps done so lately that they are not asked again.</summary>
    internal HeapSteps Resting { get; }

    /// <summary>The action, or what is asked instead while a step of it rests.</summary>
    internal static string Instead(string key, HeapSteps resting)
    {
        while ((HeapActions.All[key].Steps & resting) != 0) key = HeapActions.All[key].Otherwise!;
        return key;
    }

    /// <summary>True when this action was asked for on an earlier complaint, had time to work, and did not.</summary>
    internal bool WasTried(string key) => !HeapActions.All[key].IsIdle && _input.LastActions.Any(last =>
        last.Key == key && last.DaysAgo <= ComplaintDays && last.DaysAgo > RestDays(key));

    /// <summary>As <see cref="WasTried"/>, a routine turning included.</summary>
    internal bool WasTriedOrTurned(string key) =>
        WasTried(key) || (key == HeapActions.Turn && _input.DaysSinceTurn is > 1 and <= ComplaintDays);

    private static int RestDays(string key) =>
        Rests.Where(rest => HeapActions.All[key].Steps.HasFlag(rest.Step)).Max(rest => rest.RestDays);

    private int? DaysSince(HeapSteps step)
    {
        var done = _input.LastActions.Where(last => HeapActions.All[last.Key].Steps.HasFlag(step))
            .Select(last => (int?)last.DaysAgo);
        return (step == HeapSteps.Turn ? done.Append(_input.DaysSinceTurn) : done).Min();
    }
}
