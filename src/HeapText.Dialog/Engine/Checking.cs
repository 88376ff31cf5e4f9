using HeapText.Agronomy.Heap;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>The three checks, heat, smell and moisture, and the advice that follows from them.</summary>
internal sealed class Checking(Tending tending, Finishing finishing)
{
    /// <summary>The last choice of the squeeze: a hot heap or a wounded hand is no reason to be asked for
    /// ever.</summary>
    private const int CouldNotSqueeze = 5;

    /// <summary>Checks kept besides the last: two months of weekly ones, or the hot weeks of daily ones.</summary>
    private const int ChecksKept = 20;

    /// <summary>Answers an open check question; false when the text does not.</summary>
    public bool Answer(Talk talk, Reading reading)
    {
        if (talk.TalkedOf is not { } heap || CheckIn(talk.Farmer.Stage, reading) is not { } told) return false;
        var before = heap.Check;
        heap = Note(talk, heap, told);
        if (reading.Intent == Intent.Delay || reading.Also.Contains(Intent.Delay)) tending.Delayed(talk, heap);
        else if (heap.Check == before) Advise(talk, heap);
        else if (reading.Intent == Intent.Turned || reading.Also.Contains(Intent.Turned))
            TurnedWithCheck(talk, heap, reading.DaysAgo);
        else
            AskNextOrAdvise(talk, heap);
        return true;
    }

    /// <summary>Takes what a text says of a heap without being asked.</summary>
    public void Report(Talk talk, HeapRecord heap, HeapReport report)
    {
        var told = new ReadCheck
        {
            Heat = report.Heat,
            Smell = report.Smell,
            Moisture = report.Moisture,
            Pests = report.Pests,
        };
        if (report.HasCheck) heap = Note(talk, heap, told);
        if (report.Turned && report.HasCheck) TurnedWithCheck(talk, heap, report.DaysAgo);
        else if (report.Turned) TurnedOnly(talk, heap, report.DaysAgo);
        else if (report.Delayed) tending.Delayed(talk, heap);
        else Advise(talk, heap);
    }

    /// <summary>Says the open check question again.</summary>
    public static void AskAgain(Talk talk, HeapRecord heap)
    {
        switch (talk.Farmer.Stage)
        {
            case Stage.AskingHeat:
                talk.SayOf(heap, heap.LastTurned == talk.Today ? Catalogue.AskHeatWas : Catalogue.AskHeat);
                break;
            case Stage.AskingSmell: talk.SayOf(heap, Catalogue.AskSmell); break;
            case Stage.AskingMoisture: talk.SayOf(heap, Catalogue.AskMoisture); break;
            case Stage.AwaitingTurn: talk.SayOf(heap, Catalogue.TurnNow); break;
        }
    }

    /// <summary>Notes what was told in the heap's check of today, without an answer.</summary>
    public static HeapRecord Note(Talk talk, HeapRecord heap, ReadCheck told)
    {
        var isFirstToday = heap.Check?.On != talk.Today;
        var known = isFirstToday ? new HeapCheck { On = talk.Today } : heap.Check!;
        heap = heap with
        {
            CheckOn = heap.CheckOn <= talk.Today ? null : heap.CheckOn,
            EarlierChecks = isFirstToday ? [.. heap.Checks.TakeLast(ChecksKept)] : heap.EarlierChecks,
            WasHot = heap.WasHot || told.Heat == Heat.Hot,
            Check = known with
            {
                Heat = told.Heat ?? known.Heat,
                Smell = told.Smell ?? known.Smell,
                Moisture = told.Moisture ?? known.Moisture,
                Pests = told.Pests ?? known.Pests,
            },
        };
        talk.Put(heap);
        return heap;
    }

    /// <summary>True when a turning of this heap is due today or late.</summary>
    public static bool IsTurningDue(HeapRecord heap, LocalDate today) =>
        heap.Step is HeapStep.Turning or HeapStep.ExtraTurning && heap.Due <= today;

    private static ReadCheck? CheckIn(Stage stage, Reading reading)
    {
        var number = reading.BareNumber is { } n && n % 1 == 0 && n is >= 1 and <= 5 ? (int)n : 0;
        return stage switch
        {
            Stage.AskingHeat when number is >= 1 and <= 4 => new ReadCheck { Heat = (Heat)(number - 1) },
            Stage.AskingSmell when number >= 1 => new ReadCheck { Smell = (Smell)(number - 1) },
            Stage.AskingMoisture when number is >= 1 and <= 4 => new ReadCheck { Moisture = (Moisture)(number - 1) },
            Stage.AskingMoisture when number == CouldNotSqueeze => new ReadCheck(),
            Stage.AskingHeat or Stage.AskingSmell or Stage.AskingMoisture when !reading.Check.IsEmpty => reading.Check,
            _ => null,
        };
    }

    private void TurnedOnly(Talk talk, HeapRecord heap, int daysAgo)
    {
        tending.Turned(talk, heap, daysAgo);
        if (heap.Check?.On == talk.Today || daysAgo > 0) return;
        talk.Ask(Cue.HeatWanted, heap);
        talk.SayOf(heap, Catalogue.AskHeatWas);
    }

    private void TurnedWithCheck(Talk talk, HeapRecord heap, int daysAgo)
    {
        tending.Turned(talk, heap, daysAgo);
        Advise(talk, talk.TalkedOf!);
    }

    private void AskNextOrAdvise(Talk talk, HeapRecord heap)
    {
        if (heap.Check is { Heat: null })
        {
            talk.Ask(Cue.HeatWanted, heap);
            AskAgain(talk, heap);
        }
        else if (heap.Check is { Smell: null })
        {
            talk.Ask(Cue.SmellWanted, heap);
            AskAgain(talk, heap);
        }
        else if (heap.Check is { Moisture: null })
        {
            talk.Ask(Cue.MoistureWanted, heap);
            AskAgain(talk, heap);
        }
        else Advise(talk, heap);
    }

    private void Advise(Talk talk, HeapRecord heap)
    {
        var turnedToday = heap.LastTurned == talk.Today;
        var cooling = heap.Step is HeapStep.Settling or HeapStep.Curing;
        if (cooling && heap.Check!.Heat == Heat.Hot && !turnedToday)
        {
            finishing.HearHeat(talk, heap, Heat.Hot);
            return;
        }
        var method = tending.MethodOf(heap);
        var diagnosis = Diagnosing.Of(talk, heap, method);
        talk.Ask(Cue.Settled, heap);
        heap = Diagnosing.Say(talk, heap, method, diagnosis);
        if (!turnedToday && (diagnosis.TurnNow || IsTurningDue(heap, talk.Today))) TurnToday(talk, heap);
        // What was advised before and done is not advised again, but no text goes without an answer.
        if (talk.Says.Count == 0) NextStep.Say(talk, heap, method);
    }

    /// <summary>Asks for a turning today: the planned one, one brought forward, or one more.</summary>
    private static void TurnToday(Talk talk, HeapRecord heap)
    {
        if (!IsTurningDue(heap, talk.Today))
            heap = heap.To(StepOfNextTurning(heap), talk.Today) with { Prompts = 1, PromptedOn = talk.Today };
        talk.Put(heap);
        talk.Ask(Cue.TurningWanted, heap);
        talk.SayOf(heap, Catalogue.TurnNow);
    }

    private static HeapStep StepOfNextTurning(HeapRecord heap) =>
        heap.Step == HeapStep.Turning ? HeapStep.Turning : HeapStep.ExtraTurning;
}
