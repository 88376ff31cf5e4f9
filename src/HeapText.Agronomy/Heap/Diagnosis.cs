namespace HeapText.Agronomy.Heap;

/// <summary>What ails a heap, or that nothing does, and what to do about it.</summary>
/// <remarks>
/// Urgent signs go first and alone. Else the table's row of the heap, then what animals ask for where it does not
/// contradict; what was just done is not asked again; a planned turning that is due is asked for with the rest. At
/// most two actions, of which none contradicts the other. docs/agronomy/diagnosis.md shows the table and its sources.
/// </remarks>
public sealed record Diagnosis
{
    private const int SoonDays = 2;

    /// <summary>What was found, most likely first; empty when nothing was told.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Keys of what to do, first things first; at least one.</summary>
    public required IReadOnlyList<string> Actions { get; init; }

    /// <summary>Keys of cautions that belong to it, most pressing first.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>True when a person or a fire cannot wait.</summary>
    public bool IsUrgent { get; init; }

    /// <summary>True when an officer should hear of it: it is urgent, or the same advice did not help
    /// before.</summary>
    public bool NeedsPerson { get; init; }

    /// <summary>Days to the next check. [d, 1 to 30]</summary>
    public required int NextCheckDays { get; init; }

    /// <summary>True when it is to be turned now.</summary>
    public bool TurnNow => Actions.Any(key => HeapActions.All[key].HasTurning);

    /// <summary>The diagnosis of a heap; there is one for every input.</summary>
    /// <exception cref="KeyNotFoundException">A last action is none of <see cref="HeapActions.All"/>.</exception>
    public static Diagnosis Of(DiagnosisInput input)
    {
        if (input.Signs.Count > 0) return UrgentAdvice.For(input.Signs);
        var memory = new HeapMemory(input);
        var row = DiagnosisTable.HeapRow(input);
        var animals = DiagnosisTable.PestsRow(input);
        var wanted = row.Then.Count > 0 && memory.WasTriedOrTurned(row.Actions[0]) ? row.Then : row.Actions;

        var actions = OfRow(wanted, memory);
        var isPutOff = actions[0] != wanted[0];
        if (animals is not null) actions = WithAnimals(actions, animals.Actions, memory);
        if (memory.TurnIsDue) actions = WithTurning(actions);

        var nextCheckDays = Math.Min(row.NextCheckDays, animals?.NextCheckDays ?? row.NextCheckDays);
        return new Diagnosis
        {
            Findings = Together(row.Findings, animals?.Findings ?? []),
            Actions = actions,
            Cautions = HeapCautions.For(
                input,
                turns: actions.Any(key => HeapActions.All[key].HasTurning),
                feeds: actions.Contains(HeapActions.Feed)),
            NeedsPerson = (row.IsComplaint && memory.WasTried(wanted[0]))
                || (animals?.Actions.Any(memory.WasTried) ?? false),
            NextCheckDays = isPutOff ? Math.Min(nextCheckDays, SoonDays) : nextCheckDays,
        };
    }

    private static IReadOnlyList<Finding> Together(IReadOnlyList<Finding> heap, IReadOnlyList<Finding> animals) =>
    [
        .. heap.Concat(animals).GroupBy(finding => finding.Cause)
            .Select(same => new Finding(same.Key, same.Max(finding => finding.Confidence))),
    ];

    private static List<string> OfRow(IReadOnlyList<string> wanted, HeapMemory memory)
    {
        var first = HeapMemory.Instead(wanted[0], memory.Resting);
        if (wanted.Count == 1) return [first];
        var second = HeapMemory.Instead(wanted[1], memory.Resting);
        // While the first waits for what was just done, nothing is added; covering and resting do no harm.
        if (first != wanted[0] && HeapActions.All[first].IsIdle)
            return HeapActions.All[second].IsCover || second == HeapActions.LetCure ? [second] : [first];
        var isSecondWaiting = second != wanted[1] && HeapActions.All[second].IsIdle;
        return isSecondWaiting ? [first] : Joined(first, second);
    }

    private static List<string> WithAnimals(List<string> actions, IReadOnlyList<string> wanted, HeapMemory memory)
    {
        foreach (var key in wanted)
        {
            var resting = actions.Aggregate(memory.Resting, (steps, done) => steps | HeapActions.All[done].Steps);
            var more = HeapMemory.Instead(key, resting);
            // A heap to be looked into is squeezed before it is watered.
            var isTooSoon = actions[0] == HeapActions.LookDeeper
                && HeapActions.All[more].Steps.HasFlag(HeapSteps.Water);
            if (isTooSoon || HeapActions.All[more].IsIdle) continue;
            if (HeapActions.All[actions[0]].IsIdle) actions = Joined(more, actions[0]);
            else if (actions.Count == 1 || (key == HeapActions.RemoveFood && GivesWay(actions[1])))
                actions = Joined(actions[0], more);
        }

        return actions;
    }

    private static bool GivesWay(string second) => HeapActions.All[second].IsCover
        || second is HeapActions.BuildUp or HeapActions.LetCure or HeapActions.TestReady;

    private static List<string> WithTurning(List<string> actions)
    {
        if (actions[0] == HeapActions.AskCheck || actions.Any(key => HeapActions.All[key].HasTurning)) return actions;
        if (actions.Contains(HeapActions.AddWater))
            return [.. actions.Select(key => key == HeapActions.AddWater ? HeapActions.TurnWater : key)];
        return Joined(HeapActions.Turn, actions.FirstOrDefault(key => !HeapActions.All[key].IsIdle));
    }

    /// <summary>Both actions where they go together, else the first; doing nothing gives way to any work.</summary>
    private static List<string> Joined(string first, string? second) =>
        second is null || second == first || HeapActions.Contradict(first, second)
            ? [first]
            : [first, second];
}
