using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Words for things on hand that nobody knows: put to the trainer, and taken up once explained.</summary>
internal static class Explaining
{
    /// <summary>Words that a farmer may wait for at a time; further ones only stay out of the recipe.</summary>
    private const int MostWaitedFor = 5;

    /// <summary>Tells the farmer which words were not understood, and puts them on the trainer's list.</summary>
    /// <returns>False when the text has none.</returns>
    public static bool Ask(Talk talk, Reading reading)
    {
        List<UnknownWord> unknown =
        [
            .. reading.Unsettled.Where(thing => thing.Choices.Count == 0 && OwnWord.Plain(thing.Word) == thing.Word)
                .Select(thing => new UnknownWord(thing.Word, thing.Amount, thing.Measure, talk.Farmer.HeapsPlanned))
                .DistinctBy(thing => thing.Word),
        ];
        if (unknown.Count == 0) return false;
        var others = talk.Farmer.UnknownWords.Where(old => unknown.All(thing => thing.Word != old.Word));
        talk.Farmer = talk.Farmer with { UnknownWords = [.. unknown.Concat(others).Take(MostWaitedFor)] };
        talk.Worry(ConcernReason.UnknownWord);
        talk.Say(Catalogue.WordUnknown,
            ("words", new Value.Words([.. unknown.Select(thing => thing.Word)])), ("officer", talk.Officer));
        return true;
    }

    /// <summary>True when a word the farmer waits for has been explained.</summary>
    public static bool IsDone(Farmer farmer, Func<string, OwnWord?> find) =>
        farmer.UnknownWords.Any(waited => find(waited.Word) is not null);

    /// <summary>Tells what was explained, and goes on with the stock where that is still being taken.</summary>
    public static void Tell(Talk talk, Func<string, OwnWord?> find)
    {
        var explained = talk.Farmer.UnknownWords.Select(waited => (Waited: waited, Own: find(waited.Word)))
            .Where(pair => pair.Own is not null).ToList();
        talk.Farmer = talk.Farmer with
        {
            UnknownWords = [.. talk.Farmer.UnknownWords.Except(explained.Select(pair => pair.Waited))],
        };
        if (talk.Farmer.UnknownWords.Count == 0) talk.Unworry(ConcernReason.UnknownWord);
        var grows = false;
        foreach (var (waited, own) in explained) grows |= Tell(talk, waited, own!);
        if (grows) Stocktaking.ContinueBesideSteps(talk);
    }

    /// <returns>True when the stock being taken has grown.</returns>
    private static bool Tell(Talk talk, UnknownWord waited, OwnWord own)
    {
        var word = ("word", (Value)new Value.Words([own.Word]));
        var officer = ("officer", talk.Officer);
        if (own.Material is not { } key)
        {
            talk.Say(Catalogue.WordIgnored, officer, word);
            return false;
        }
        var material = ("material", (Value)new Value.Material(key));
        if (own.IsRefused)
        {
            talk.Say(Catalogue.WordIs, officer, word, material);
            Stocktaking.SayNeverIn(talk, [key]);
            return false;
        }
        var isOpen = Stocktaking.IsUnderWay(talk.Farmer.Stage) && talk.Farmer.Draft is not null
            && waited.HeapsPlanned == talk.Farmer.HeapsPlanned;
        talk.Say(isOpen ? Catalogue.WordAdded : Catalogue.WordKnown, officer, word, material);
        if (isOpen) Stocktaking.Add(talk, new ReadMaterial(key, waited.Amount, waited.Measure));
        return isOpen;
    }
}
