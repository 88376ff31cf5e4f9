using HeapText.Agronomy.Heap;

namespace HeapText.Dialog.Engine;

/// <summary>A heap whose reminders had ended is taken up again.</summary>
internal static class Reviving
{
    /// <summary>Goes on where the heap was: a turning or the question whether it warmed again is due today.</summary>
    public static HeapRecord TakeUp(Talk talk, HeapRecord heap, HeapMethod method)
    {
        var step = heap.TurnedOn.Count < method.Turns ? HeapStep.Turning : HeapStep.Settling;
        var revived = heap.To(step, talk.Today) with { Prompts = 1, PromptedOn = talk.Today };
        talk.Put(revived);
        return revived;
    }
}
