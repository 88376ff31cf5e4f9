using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

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
            talk.Say(Catalogue.LanguageUnknown, ("choices", talk.LanguageChoices));
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
            Finishing.AskNow(talk, heap);
            return;
        }
        if (heap is not null) SayReadyWhen(talk, heap);
        SayNext(talk);
    }

    /// <summary>Not ready yet, and between which days it may be: by the forecast, else by the method.</summary>
    private void SayReadyWhen(Talk talk, HeapRecord heap)
    {
        var method = tending.MethodOf(heap);
        var from = heap.Outlook?.ReadyFrom ?? heap.BuiltOn?.PlusDays(method.ReadyLowDays);
        var to = heap.Outlook is null ? heap.BuiltOn?.PlusDays(method.ReadyHighDays) : heap.Outlook.ReadyTo;
        var first = LocalDate.Max(from ?? talk.Today, talk.Today.PlusDays(1));
        if (heap is { Step: HeapStep.Curing, Due: { } rested }) first = LocalDate.Max(first, rested);
        if (from is not null && to is { } late && first < late)
            talk.SayOf(heap, Catalogue.ReadyWhen, ("early", new Value.Date(first)), ("late", new Value.Date(late)));
        else talk.SayOf(heap, Catalogue.ReadyNotYet);
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
        var due = heaps.Where(heap => Finishing.IsQuestionDue(heap, talk.Today)).ToList();
        foreach (var heap in heaps.Except(due)) NextStep.Say(talk, heap, tending.MethodOf(heap));
        if (due.Count > 0) Finishing.AskNow(talk, due[0]);
        if (heaps.Count > 0) return;
        var isReady = talk.Farmer.Heaps.Any(h => h.Step == HeapStep.Ready);
        talk.Say(isReady ? Catalogue.NextReady : Catalogue.NextNothing);
    }
}
