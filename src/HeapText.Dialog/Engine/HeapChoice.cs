using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Which heap a report is about: asked only when it matters.</summary>
internal sealed class HeapChoice(Tending tending, Checking checking)
{
    /// <summary>Takes a report on a heap that the text did not name.</summary>
    public void Hear(Talk talk, Reading reading)
    {
        var report = ReportOf(reading);
        if (talk.Farmer is { Stage: Stage.AskingHeap, Report: { } before }) report = before.And(report);
        var candidates = Named(talk, reading) is { } named ? [named] : Candidates(talk, report);
        if (candidates.Count == 0) talk.Say(Catalogue.NoHeapStands);
        else if (candidates.Count == 1) Take(talk, candidates[0], report);
        else
        {
            talk.Ask(Cue.HeapWanted);
            talk.Farmer = talk.Farmer with { Report = report with { Heaps = [.. candidates.Select(h => h.Number)] } };
            OpenQuestion.AskWhichHeap(talk);
        }
    }

    /// <summary>Answers which heap was meant; false when the text does not.</summary>
    public bool Answer(Talk talk, Reading reading)
    {
        if (talk.Farmer is not { Stage: Stage.AskingHeap, Report: { } report }) return false;
        if (reading.BareNumber is not { } number) return false;
        if (talk.Farmer.Heaps.FirstOrDefault(h => h.Number == number) is not { } heap) return false;
        if (!report.Heaps.Contains(heap.Number)) return false;
        talk.Farmer = talk.Farmer with { Report = null };
        talk.Ask(Cue.Settled, heap);
        Take(talk, heap, report);
        return true;
    }

    /// <summary>True when a text reports on another heap than the open question is about.</summary>
    public static bool IsOfAnother(Talk talk, Reading reading) =>
        (!reading.Check.IsEmpty || reading.Intent is Intent.Turned or Intent.Delay)
        && Named(talk, reading) is { } heap && heap.Number != talk.Farmer.TalkOf;

    private static HeapRecord? Named(Talk talk, Reading reading) =>
        talk.Farmer.Heaps.FirstOrDefault(heap => heap.IsTended && heap.Number == reading.Heap);

    private void Take(Talk talk, HeapRecord heap, HeapReport report)
    {
        if (heap.Step == HeapStep.GivenUp) heap = Reviving.TakeUp(talk, heap, tending.MethodOf(heap));
        talk.Farmer = talk.Farmer with { TalkOf = heap.Number };
        checking.Report(talk, heap, report);
    }

    private static List<HeapRecord> Candidates(Talk talk, HeapReport report)
    {
        var tended = talk.Farmer.Heaps.Where(h => h.IsTended).ToList();
        if (tended.Count == 0)
            return [.. talk.Farmer.Heaps.Where(h => h.Step == HeapStep.GivenUp).TakeLast(1)];
        var spokenOf = talk.Farmer.Stage is Stage.AskingHeat or Stage.AskingSmell or Stage.AskingMoisture
            or Stage.AwaitingTurn or Stage.AskingTurned or Stage.AskingReheat or Stage.AskingReady;
        if (spokenOf && tended.FirstOrDefault(h => h.Number == talk.Farmer.TalkOf) is { } open) return [open];
        if (!report.Turned && !report.Delayed) return tended;
        var due = tended.Where(heap => Checking.IsTurningDue(heap, talk.Today)).ToList();
        return due.Count == 1 ? due : tended;
    }

    private static HeapReport ReportOf(Reading reading) => new()
    {
        Heaps = [],
        Turned = reading.Intent == Intent.Turned || reading.Also.Contains(Intent.Turned),
        Delayed = reading.Intent == Intent.Delay,
        DaysAgo = reading.DaysAgo,
        Heat = reading.Check.Heat,
        Smell = reading.Check.Smell,
        Moisture = reading.Check.Moisture,
        Pests = reading.Check.Pests,
    };
}
