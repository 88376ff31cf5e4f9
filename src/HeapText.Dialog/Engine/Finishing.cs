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
    private const int SeedsToSow = 10;

    /// <summary>Days from the sprout test's message to the count: a day to sow and a week to grow.</summary>
    private const int DaysToSprout = 8;

    /// <summary>Asks what is due: whether it warmed again, or how it looks.</summary>
    public static void Remind(Talk talk, HeapRecord heap)
    {
        heap = heap with { PromptedOn = talk.Today, Prompts = heap.Prompts + 1 };
        talk.Put(heap);
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
            HearHeat(talk, Checking.Note(talk, heap, new ReadCheck { Heat = heat }), heat.Value);
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
        if (reading.BareNumber is not { } grown || grown % 1 != 0 || grown is < 0 or > SeedsToSow) return false;
        if (SproutTest.Judge(SeedsToSow, (int)grown) == SproutVerdict.Immature)
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
