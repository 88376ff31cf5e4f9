using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>Every combination a diagnosis can be asked about, urgent signs apart.</summary>
internal static class EveryHeap
{
    internal static IEnumerable<DiagnosisInput> Told() =>
        from heat in OrNull<Agronomy.Heap.Heat>()
        from smell in OrNull<Smell>()
        from moisture in OrNull<Moisture>()
        from pests in OrNull<Pests>()
        from phase in OrNull<HeapPhase>()
        from form in Enum.GetValues<HeapForm>()
        from rod in OrNull<RodKind>()
        select new DiagnosisInput
        {
            Heat = heat,
            Smell = smell,
            Moisture = moisture,
            Pests = pests,
            Phase = phase,
            Form = form,
            Rod = rod,
        };

    /// <summary>The combinations with and without a turning that is due, and turned lately or not.</summary>
    internal static IEnumerable<DiagnosisInput> Turned() =>
        from told in Told()
        from isDue in (bool[])[false, true]
        from days in (int?[])[null, 0, 1, 5]
        select told with { IsTurnDue = isDue, DaysSinceTurn = days };

    /// <summary>The combinations, rods apart, after each action, just done or some days ago.</summary>
    internal static IEnumerable<DiagnosisInput> Treated() =>
        from told in Told()
        where told.Rod is null
        from key in HeapActions.All.Keys
        from days in (int[])[0, 1, 4]
        select told with { LastActions = [new LastAction(key, days)] };

    private static IEnumerable<T?> OrNull<T>()
        where T : struct, Enum => Enum.GetValues<T>().Select(value => (T?)value).Prepend(null);
}
