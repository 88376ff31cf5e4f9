using HeapText.Agronomy.Heap;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>What comes next for one heap, in words.</summary>
internal static class NextStep
{
    public static void Say(Talk talk, HeapRecord heap, HeapMethod method)
    {
        var date = ("date", (Value)new Value.Date(heap.Due ?? talk.Today));
        var turn = ("turn", (Value)new Value.Ordinal(heap.TurnedOn.Count + 1));
        var turns = ("turns", (Value)new Value.Number(method.Turns));
        switch (heap.Step)
        {
            case HeapStep.Planned: talk.SayOf(heap, Catalogue.NextBuild); break;
            case HeapStep.Turning when heap.Due < talk.Today:
                talk.SayOf(heap, Catalogue.TurnLate, date, turn, turns);
                break;
            case HeapStep.Turning: talk.SayOf(heap, Catalogue.NextTurn, turn, turns, date); break;
            case HeapStep.ExtraTurning: talk.SayOf(heap, Catalogue.TurnNow); break;
            case HeapStep.Settling: talk.SayOf(heap, Catalogue.NextReheat, date); break;
            case HeapStep.Sprouting: talk.SayOf(heap, Catalogue.NextSprouts, date); break;
            case HeapStep.Curing: talk.SayOf(heap, Catalogue.NextCure, date); break;
        }
    }
}
