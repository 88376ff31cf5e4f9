using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>What is said of a heap unasked, on its day.</summary>
internal sealed class Reminding(Tending tending)
{
    /// <summary>Says what is due of this heap today.</summary>
    public void Remind(Talk talk, HeapRecord heap)
    {
        if (Agenda.IsCheckPast(heap, talk.Today))
        {
            heap = heap with { CheckOn = null };
            talk.Put(heap);
            if (Agenda.PromptDay(heap) > talk.Today) return;
        }
        if (Agenda.IsCheckFirst(heap)) tending.RemindOfCheck(talk, heap);
        else if (heap.Step == HeapStep.Sprouting) Finishing.Remind(talk, heap);
        else if (heap.Prompts >= Agenda.MostPrompts) GiveUp(talk, heap);
        else if (heap.Step == HeapStep.Planned) AskBuilt(talk, heap);
        else if (heap.Step is HeapStep.Turning or HeapStep.ExtraTurning) tending.Remind(talk, heap);
        else Finishing.Remind(talk, heap);
    }

    private static void AskBuilt(Talk talk, HeapRecord heap)
    {
        heap = heap with { PromptedOn = talk.Today, Prompts = heap.Prompts + 1 };
        talk.Put(heap);
        talk.Ask(Cue.BuiltWanted, heap);
        talk.SayOf(heap, Catalogue.AskBuilt);
    }

    private static void GiveUp(Talk talk, HeapRecord heap)
    {
        talk.Worry(ConcernReason.Overdue);
        talk.SayOf(heap, Catalogue.LastReminder, ("officer", talk.Officer));
        talk.Put(heap.To(HeapStep.GivenUp, null));
        talk.Ask(Cue.Settled, heap);
    }
}
