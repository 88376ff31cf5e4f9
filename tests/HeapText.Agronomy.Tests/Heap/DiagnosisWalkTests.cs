using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

/// <summary>What holds for every diagnosis, whatever was told: no combination breaks a rule.</summary>
public sealed class DiagnosisWalkTests
{
    private static readonly (string Rule, Func<DiagnosisInput, Diagnosis, bool> IsBroken)[] Rules =
    [
        ("one or two actions", (_, said) => said.Actions.Count is < 1 or > 2),
        ("no action twice", (_, said) => said.Actions is [var one, var two] && one == two),
        ("known actions", (_, said) => !said.Actions.All(HeapActions.All.ContainsKey)),
        ("no contradiction", (_, said) => said.Actions is [var one, var two] && HeapActions.Contradict(one, two)),
        ("next check within a month", (_, said) => said.NextCheckDays is < 1 or > 30),
        ("not urgent without a sign", (_, said) => said.IsUrgent),
        ("turned yesterday: no turning unless planned", (heap, said) =>
            said.TurnNow && heap.DaysSinceTurn <= 1 && (heap.DaysSinceTurn == 0 || !heap.IsTurnDue)),
        ("a step just done is not asked again", (heap, said) =>
            heap.LastActions.Any(last => last.DaysAgo <= 1 && said.Actions.Any(key => Share(key, last.Key)))),
        ("curing: no turning without a cause", (heap, said) =>
            heap.Phase == HeapPhase.Curing && said.TurnNow && heap.Heat is not (Heat.Hot or Heat.Warm)
            && !SmellsBad(heap) && heap.Moisture != Moisture.Dripping),
        ("a planned turning is not answered by waiting", (heap, said) =>
            heap is { IsTurnDue: true, Phase: not HeapPhase.Curing, DaysSinceTurn: not 0 }
            && !said.TurnNow && !said.Actions.Contains(HeapActions.AskCheck)),
        ("no water on a wet heap", (heap, said) => heap.Moisture is Moisture.Dripping or Moisture.Wet
            && said.Actions.Any(key => HeapActions.All[key].Steps.HasFlag(HeapSteps.Water))),
        ("nothing dry into a dry heap", (heap, said) => heap.Moisture == Moisture.Dry
            && said.Actions.Any(key => key is HeapActions.AddDry or HeapActions.KeepRainOff)),
        ("ammonia: no feed", (heap, said) =>
            heap.Smell == Smell.Ammonia && said.Actions.Contains(HeapActions.Feed)),
        ("a fault is not called well", (heap, said) =>
            (SmellsBad(heap) || heap.Moisture is Moisture.Dripping or Moisture.Dry)
            && said.Findings.Any(finding => finding.Cause == HeapCauses.WorkingWell)),
        ("a fault gets work, or rest from work just done", (heap, said) =>
            SmellsBad(heap) && heap is { DaysSinceTurn: null, LastActions.Count: 0 } && !said.Actions.Any(IsWork)),
        ("no cause twice", (_, said) =>
            said.Findings.DistinctBy(finding => finding.Cause).Count() != said.Findings.Count),
        ("rats: the food goes where two actions leave room", (heap, said) =>
            heap is { Pests: Pests.Rats, DaysSinceTurn: null, LastActions.Count: 0, IsTurnDue: false }
            && !said.Actions.Contains(HeapActions.RemoveFood)
            && said.Actions is not [_, HeapActions.AddWater or HeapActions.AddBrown or HeapActions.Feed]),
        ("hot and dry: fire is the first caution", (heap, said) =>
            heap is { Heat: Heat.Hot, Moisture: Moisture.Dry } && said.Cautions[0] != HeapCautions.Fire),
    ];

    [Fact]
    public void Of_EveryCombinationTurnedOrNot_BreaksNoRule() => AssertNoRuleBroken(EveryHeap.Turned());

    [Fact]
    public void Of_EveryCombinationAfterEveryAction_BreaksNoRule() => AssertNoRuleBroken(EveryHeap.Treated());

    [Fact]
    public void Of_UrgentSignWithAnyOther_SaysNothingElse()
    {
        var told = EveryHeap.Told().Where(heap => heap.Rod is null && heap.Form == HeapForm.Open).ToList();
        foreach (var sign in Enum.GetValues<UrgentSign>())
        {
            var alone = Diagnosis.Of(new DiagnosisInput { Signs = [sign] });

            Assert.True(alone.IsUrgent && alone.NeedsPerson && !alone.TurnNow);
            Assert.All(told, heap => Assert.Equal(
                alone.Actions, Diagnosis.Of(heap with { Signs = [sign], IsTurnDue = true }).Actions));
        }
    }

    [Fact]
    public void Rows_Each_AreReachedBySomeCombination()
    {
        var reached = EveryHeap.Told()
            .SelectMany(heap => new[] { DiagnosisTable.HeapRow(heap), DiagnosisTable.PestsRow(heap) })
            .Where(row => row is not null).Select(row => row!.Name).ToHashSet();

        Assert.Empty(DiagnosisTable.Rows.Select(row => row.Name).Except(reached));
    }

    private static void AssertNoRuleBroken(IEnumerable<DiagnosisInput> heaps)
    {
        List<string> broken = [];
        var walked = 0;
        foreach (var heap in heaps)
        {
            var said = Diagnosis.Of(heap);
            broken.AddRange(Rules.Where(rule => rule.IsBroken(heap, said))
                .Select(rule => $"{rule.Rule}: {heap} {string.Join(' ', heap.LastActions)} "
                    + $"-> {string.Join(' ', said.Actions)}"));
            walked++;
        }

        Assert.Empty(broken.Take(5));
        Assert.True(walked > 400_000, $"The walk took {walked} steps only.");
    }

    private static bool Share(string one, string other) =>
        (HeapActions.All[one].Steps & HeapActions.All[other].Steps) != HeapSteps.None;

    private static bool IsWork(string key) => HeapActions.All[key].Steps != HeapSteps.None;

    private static bool SmellsBad(DiagnosisInput heap) =>
        heap.Smell is Smell.Rotten or Smell.Sour or Smell.Ammonia;
}
