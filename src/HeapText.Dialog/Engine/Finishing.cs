using HeapText.Agronomy.Heap;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>A heap from its last turning to ready compost.</summary>
internal sealed class Finishing(Tending tending)
{
    /// <summary>Asks what is due: whether it warmed again, or how it looks.</summary>
    public static void Remind(Talk talk, HeapRecord heap)
    {
        heap = heap with { PromptedOn = talk.Today, Prompts = heap.Prompts + 1 };
        talk.Put(heap);
        talk.Ask(heap.Step == HeapStep.Settling ? Cue.ReheatWanted : Cue.LookWanted, heap);
        AskAgain(talk, heap);
    }

    /// <summary>Says the open question again.</summary>
    public static void AskAgain(Talk talk, HeapRecord heap)
    {
        if (talk.Farmer.Stage == Stage.AskingReheat) talk.SayOf(heap, Catalogue.AskReheat);
        if (talk.Farmer.Stage == Stage.AskingReady) talk.SayOf(heap, Catalogue.AskReady);
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

    private static void IsReady(Talk talk, HeapRecord heap)
    {
        talk.SayOf(heap, Catalogue.Ready);
        talk.SayOf(heap, Catalogue.ReadyCare);
        if (!heap.WasHot) talk.SayOf(heap, Catalogue.ReadyNeverHot);
        talk.Put(heap.To(HeapStep.Ready, null));
        talk.Ask(Cue.Settled, heap);
    }

    private void IsNotReady(Talk talk, HeapRecord heap)
    {
        heap = heap.To(HeapStep.Curing, LocalDate.Max(
            talk.Today.PlusDays(tending.MethodOf(heap).MoreRestDays), heap.Due ?? talk.Today));
        talk.Put(heap);
        talk.Ask(Cue.Settled, heap);
        talk.SayOf(heap, Catalogue.NotReady, ("date", new Value.Date(heap.Due!.Value)));
    }
}
