using HeapText.Agronomy.Heap;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>What a heap's last check means, and what is said of it.</summary>
internal static class Diagnosing
{
    /// <summary>Pieces of advice kept, to know what was tried.</summary>
    private const int AdvicesKept = 3;

    /// <summary>Causes that need no further check before the planned one.</summary>
    private static readonly string[] NoFault =
        [HeapCauses.WorkingWell, HeapCauses.JustBuilt, HeapCauses.SlowStart, HeapCauses.FinishedHeating];

    /// <summary>The diagnosis of the check of today.</summary>
    public static Diagnosis Of(Talk talk, HeapRecord heap, HeapMethod method)
    {
        var age = HeapHeat.DayOf(heap, talk.Today);
        var sinceTurn = heap.LastTurned is { } turned ? HeapHeat.DaysSince(turned, talk.Today) : age;
        var byCalendar = DiagnosisInput.At(method, age, sinceTurn);
        return Diagnosis.Of(byCalendar with
        {
            Heat = heap.Check?.Heat,
            Smell = heap.Check?.Smell,
            Moisture = heap.Check?.Moisture,
            Pests = heap.Check?.Pests,
            Rod = HeapHeat.KindOf(talk.Farmer.Rod),
            Phase = heap.Step switch
            {
                HeapStep.Settling or HeapStep.ExtraTurning => HeapPhase.Cooling,
                HeapStep.Curing => HeapPhase.Curing,
                // Turned late, it has a turning before it still, whatever the calendar says.
                HeapStep.Turning when byCalendar.Phase == HeapPhase.Curing => HeapPhase.Cooling,
                _ => byCalendar.Phase,
            },
            IsTurnDue = Checking.IsTurningDue(heap, talk.Today),
            LastActions = [.. heap.Advised.SelectMany(advice => Done(talk, heap, advice))],
        });
    }

    /// <summary>Says what was found and what to do, and remembers it.</summary>
    public static HeapRecord Say(Talk talk, HeapRecord heap, HeapMethod method, Diagnosis diagnosis)
    {
        // A turning without more to it is asked for by the message that follows.
        var actions = diagnosis.Actions.Where(key => key != HeapActions.AskCheck).ToList();
        var told = actions.Where(key => key != HeapActions.Turn).ToList();
        var cause = ("cause", (Value)new Value.Cause(diagnosis.Findings is [var first, ..] ? first.Cause : ""));
        if (diagnosis.Cautions.Contains(HeapCautions.Fire)) talk.SayOf(heap, Catalogue.CareFire);
        if (told.Count > 0) talk.SayOf(heap, Catalogue.Advice, cause, ("actions", new Value.Actions(told)));
        else if (actions.Count > 0) talk.SayOf(heap, Catalogue.Finding, cause);
        if (diagnosis.NeedsPerson)
        {
            talk.Worry(ConcernReason.Trouble);
            talk.SayOf(heap, Catalogue.TroubleTold, ("officer", talk.Officer));
        }
        var check = talk.Today.PlusDays(diagnosis.NextCheckDays);
        var isWell = diagnosis.Findings.Count == 0 || NoFault.Contains(diagnosis.Findings[0].Cause);
        heap = heap with
        {
            Advised = actions.Count == 0
                ? heap.Advised
                : [.. heap.Advised.Append(new HeapAdvised { On = talk.Today, Actions = actions })
                    .TakeLast(AdvicesKept)],
            CheckOn = isWell ? Tending.NextCheck(talk, method, heap.BuiltOn!.Value) : check,
        };
        talk.Put(heap);
        return heap;
    }

    /// <summary>What of some advice was done: a turning when it was told, the rest from the next day on.</summary>
    private static IEnumerable<LastAction> Done(Talk talk, HeapRecord heap, HeapAdvised advice)
    {
        var hasTurning = advice.Actions.Any(key => HeapActions.All[key].HasTurning);
        LocalDate? on = !hasTurning ? advice.On : heap.LastTurned >= advice.On ? heap.LastTurned : null;
        if (on is not { } day || (!hasTurning && day == talk.Today)) return [];
        return advice.Actions.Select(key => new LastAction(key, HeapHeat.DaysSince(day, talk.Today)));
    }
}
