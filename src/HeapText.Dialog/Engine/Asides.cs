using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>What a farmer may text at any time without losing the open question: help, what next, a person, a
/// language.</summary>
internal sealed class Asides(Tending tending)
{
    /// <summary>Answers an aside; false when the intent is none.</summary>
    public bool Answer(Talk talk, Reading reading)
    {
        switch (reading.Intent)
        {
            case Intent.Help: talk.Say(Catalogue.Help); break;
            case Intent.Person: Tell(talk, ConcernReason.Person, Catalogue.PersonTold); break;
            case Intent.Language: SetLanguage(talk, reading.Language); break;
            case Intent.Start: SayNext(talk); return true;
            case Intent.Amounts: SayAmounts(talk); break;
            case Intent.Ready: SayReadiness(talk); return true;
            case Intent.Next: SayNext(talk); return true;
            default: return false;
        }
        OpenQuestion.AskAgain(talk);
        return true;
    }

    public static void Tell(Talk talk, ConcernReason reason, MessageSpec answer)
    {
        talk.Worry(reason);
        talk.Say(answer, ("officer", talk.Officer));
    }

    private static void SetLanguage(Talk talk, string? language)
    {
        if (language is null || !talk.Speaks(language))
        {
            talk.Say(Catalogue.LanguageUnknown, ("choices", new Value.LanguageHints()));
            return;
        }
        talk.Farmer = talk.Farmer with { Language = language, LanguageChosen = true };
        talk.Say(Catalogue.LanguageSet);
    }

    private static void SayAmounts(Talk talk)
    {
        var heap = talk.Farmer.Heaps.FirstOrDefault(h => h.Step == HeapStep.Planned)
            ?? talk.Farmer.Heaps.LastOrDefault(h => h.IsTended);
        if (heap is null)
        {
            if (talk.Farmer.Stage is not (Stage.Gathering or Stage.AskingStock)) talk.Say(Catalogue.NoAmounts);
            return;
        }
        Planning.SayRecipe(talk, heap);
        if (heap.Step == HeapStep.Planned) Planning.SaySize(talk, heap);
    }

    /// <summary>Ready? Asks how it looks when it has cured; else says that it is too early, and what comes
    /// next.</summary>
    private void SayReadiness(Talk talk)
    {
        var heap = talk.Farmer.Heaps.FirstOrDefault(h => h.IsTended);
        if (heap is { Step: HeapStep.Curing } && heap.Due <= talk.Today)
        {
            talk.Ask(Cue.LookWanted, heap);
            Finishing.AskAgain(talk, heap);
            return;
        }
        if (heap is not null) talk.SayOf(heap, Catalogue.ReadyNotYet);
        SayNext(talk);
    }

    /// <summary>What comes next: the open question, or the next step of each heap.</summary>
    public void SayNext(Talk talk)
    {
        if (OpenQuestion.IsOpen(talk))
        {
            OpenQuestion.AskAgain(talk);
            if (talk.Farmer.Stage != Stage.Gathering || talk.Farmer.Heaps.Count == 0) return;
        }
        var heaps = talk.Farmer.Heaps.Where(h => h.Step is not (HeapStep.Ready or HeapStep.GivenUp)).ToList();
        if (heaps.Count == 0 && talk.Farmer.Heaps.LastOrDefault(h => h.Step == HeapStep.GivenUp) is { } left)
            heaps.Add(Reviving.TakeUp(talk, left, tending.MethodOf(left)));
        foreach (var heap in heaps) NextStep.Say(talk, heap, tending.MethodOf(heap));
        if (heaps.Count > 0) return;
        var isReady = talk.Farmer.Heaps.Any(h => h.Step == HeapStep.Ready);
        talk.Say(isReady ? Catalogue.NextReady : Catalogue.NextNothing);
    }
}
