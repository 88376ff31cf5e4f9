using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Use;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>A heap from its last turning to ready compost.</summary>
internal sealed class Finishing(Tending tending)
{
    /// <summary>Seeds that the farmer is told to sow. Chosen: more than the fewest that tell anything.</summary>
    public const int SeedsToSow = 10;

    /// <summary>Days from the sprout test's message to the count: a day to sow and a week to grow.</summary>
    private const int DaysToSprout = 8;

    /// <summary>Asks what is due: whether it warmed again, how it looks, or how seeds grew in it. The last may stay
    /// without an answer: then it counts as ready.</summary>
    public static void Remind(Talk talk, HeapRecord heap)
    {
        var prompted = heap with { PromptedOn = talk.Today, Prompts = heap.Prompts + 1 };
        var isLast = heap.Step == HeapStep.Sprouting && prompted.Prompts >= Agenda.MostSoftPrompts;
        talk.Put(isLast ? prompted.To(HeapStep.Ready, null) : prompted);
        Ask(talk, heap);
    }

    /// <summary>True when the farmer can be asked now what comes next for this heap.</summary>
    public static bool IsQuestionDue(HeapRecord heap, LocalDate today) =>
        heap.Step is HeapStep.Settling or HeapStep.Curing or HeapStep.Sprouting && heap.Due <= today;

    /// <summary>Asks what is due because the farmer wants to know; not asked again the same day.</summary>
    public static void AskNow(Talk talk, HeapRecord heap)
    {
        talk.Put(heap with { PromptedOn = talk.Today, Prompts = Math.Max(heap.Prompts, 1) });
        Ask(talk, heap);
    }

    private static void Ask(Talk talk, HeapRecord heap)
    {
        talk.Ask(heap.Step switch
        {
            HeapStep.Settling => Cue.ReheatWanted,
            HeapStep.Sprouting => Cue.SproutsWanted,
            _ => Cue.LookWanted,
        }, heap);
        AskAgain(talk, heap);
    }

    /// <summary>Says the open question again.</summary>
    public static void AskAgain(Talk talk, HeapRecord heap)
    {
        if (talk.Farmer.Stage == Stage.AskingReheat) talk.SayOf(heap, Catalogue.AskReheat);
        if (talk.Farmer.Stage == Stage.AskingReady) talk.SayOf(heap, Catalogue.AskReady);
        if (talk.Farmer.Stage == Stage.AskingSprouts) talk.SayOf(heap, Catalogue.AskSprouts);
    }

    /// <summary>Answers the open question; false when the text does not.</summary>
    public bool Answer(Talk talk, Reading reading)
    {
        if (talk.TalkedOf is not { } heap) return false;
        if (talk.Farmer.Stage == Stage.AskingReheat)
        {
            var heat = reading.Check.Heat ?? reading.BareNumber switch
            {
                1 => Heat.Hot,
                2 => Heat.Warm,
                3 => Heat.Cool,
                4 => Heat.Cold,
                _ => null,
            };
            if (heat is null) return false;
            HearHeat(talk, Checking.Note(talk, heap, reading.Check with { Heat = heat }), heat.Value);
            return true;
        }
        if (talk.Farmer.Stage == Stage.AskingSprouts) return HearSprouts(talk, heap, reading);
        if (talk.Farmer.Stage != Stage.AskingReady) return false;
        if (reading.Intent == Intent.Yes || reading.BareNumber == 1) IsReady(talk, heap);
        else if (reading.Intent == Intent.No || reading.BareNumber == 2) IsNotReady(talk, heap);
        else return false;
        return true;
    }

    /// <summary>Takes the heat felt after the last turning: warm again means one more turning, else it cures.</summary>
    public void HearHeat(Talk talk, HeapRecord heap, Heat heat)
    {
        if (heat is Heat.Hot or Heat.Warm)
        {
            heap = heap.To(HeapStep.ExtraTurning, talk.Today) with { Prompts = 1, PromptedOn = talk.Today };
            talk.Put(heap);
            talk.Ask(Cue.TurningWanted, heap);
            if (heat == Heat.Hot && heap.Check?.Moisture == Moisture.Dry) talk.SayOf(heap, Catalogue.CareFire);
            talk.SayOf(heap, Catalogue.Reheated);
            return;
        }
        heap = heap.To(HeapStep.Curing, talk.Today.PlusDays(tending.MethodOf(heap).CuringDays));
        talk.Put(heap);
        talk.Ask(Cue.Settled, heap);
        talk.SayOf(heap, Catalogue.Curing, ("date", new Value.Date(heap.Due!.Value)));
    }

    /// <summary>Tells of the sprout test and what to take care of; asks how the seeds grew when they have.</summary>
    private static void IsReady(Talk talk, HeapRecord heap)
    {
        heap = heap.To(HeapStep.Sprouting, talk.Today.PlusDays(DaysToSprout));
        talk.Put(heap);
        talk.Ask(Cue.Settled, heap);
        talk.SayOf(heap, Catalogue.Ready, ("date", new Value.Date(heap.Due!.Value)));
        if (heap.Outlook?.YieldBuckets is > 0 and var buckets)
            talk.SayOf(heap, Catalogue.ReadyYield, ("buckets", new Value.Buckets(buckets)));
        talk.SayOf(heap, Catalogue.ReadyCare);
        if (heap.Plan.HoldsManure)
            talk.SayOf(heap, HeapHeat.HygieneOf(heap, talk.Farmer.Rod).Verdict == Hygiene.Likely
                ? Catalogue.ReadyWasHot
                : Catalogue.ReadyNotHot);
    }

    private void IsNotReady(Talk talk, HeapRecord heap) => RestLonger(talk, heap, Catalogue.NotReady);

    private void RestLonger(Talk talk, HeapRecord heap, MessageSpec message)
    {
        heap = heap.To(HeapStep.Curing, LocalDate.Max(
            talk.Today.PlusDays(tending.MethodOf(heap).MoreRestDays), heap.Due ?? talk.Today));
        talk.Put(heap);
        talk.Ask(Cue.Settled, heap);
        talk.SayOf(heap, message, ("date", new Value.Date(heap.Due!.Value)));
    }

    private bool HearSprouts(Talk talk, HeapRecord heap, Reading reading)
    {
        if (reading.Intent == Intent.No)
        {
            Finish(talk, heap, Catalogue.SproutsNotTried);
            return true;
        }
        int? told = Counts.In(reading) switch
        {
            [var count] => count,
            [var count, SeedsToSow] => count,
            _ when reading.BareNumber is > 0 and < 1 and var part => (int)(part * SeedsToSow),
            _ => null,
        };
        if (told is not { } grown || grown > SeedsToSow) return false;
        if (SproutTest.Judge(SeedsToSow, grown) == SproutVerdict.Immature)
            RestLonger(talk, heap, Catalogue.SproutsPoor);
        else Finish(talk, heap, Catalogue.SproutsGood);
        return true;
    }

    private static void Finish(Talk talk, HeapRecord heap, MessageSpec message)
    {
        talk.Put(heap.To(HeapStep.Ready, null));
        talk.Ask(Cue.Settled, heap);
        talk.SayOf(heap, message);
    }
}
