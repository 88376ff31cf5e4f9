using HeapText.Agronomy.Materials;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Which material a word meant that may mean several: asked, never guessed.</summary>
internal static class WhichMaterial
{
    /// <summary>What a text names; a word for several materials counts as the one of them that was spoken of
    /// before.</summary>
    public static IReadOnlyList<ReadMaterial> Settle(Reading reading, IReadOnlyList<string> spokenOf)
    {
        var named = reading.Materials.Concat(reading.Unsettled.Where(thing => thing.Choices.Count > 0));
        return [.. named.Select(thing => thing.Choices.Intersect(spokenOf).ToList() is [var only]
            ? new ReadMaterial(only, thing.Amount, thing.Measure)
            : thing)];
    }

    /// <summary>Asks which material the first such word means.</summary>
    public static void Ask(Talk talk)
    {
        var item = talk.Draft.Unsure[0];
        talk.Ask(Cue.WhichWanted);
        talk.Say(Catalogue.AskWhich, ("word", new Value.Words([item.Word])),
            ("choices", new Value.Choices([.. item.Choices.Select(key => new Value.Material(key))])));
    }

    /// <summary>Takes an answer by number or in words; false when the text is none.</summary>
    public static bool Answer(Talk talk, string text, Reading reading)
    {
        if (talk.Farmer.Stage != Stage.AskingWhich || talk.Draft.Unsure is not [var item, ..]) return false;
        if (reading.BareNumber == 0 || (reading.Intent == Intent.No && reading.Materials.Count == 0))
            Take(talk, item, null, null);
        else if (reading.BareNumber is { } number)
        {
            if (number < 1 || number > item.Choices.Count || number % 1 != 0) return false;
            Take(talk, item, item.Choices[(int)number - 1], null);
        }
        else if (reading.Materials is [{ Choices.Count: 0 } named] && item.Choices.Contains(named.Material))
            Take(talk, item, named.Material, named);
        else if (reading.Refused is [var refused] && item.Choices.Contains(refused)) Take(talk, item, refused, null);
        else if (ByName(talk, item, text) is { } meant) Take(talk, item, meant, null);
        else return false;
        return true;
    }

    /// <summary>The one choice in whose name all words of the text stand, such as "dry" for dry grass.</summary>
    private static string? ByName(Talk talk, UnsureItem item, string text)
    {
        var words = Letters.Words(text).ToList();
        var meant = item.Choices.Where(key => words.All(Letters.Words(talk.NameOf(key)).Contains)).ToList();
        return words.Count > 0 && meant is [var only] ? only : null;
    }

    /// <summary>Puts what the word was told of into the draft as this material; null leaves it out.</summary>
    private static void Take(Talk talk, UnsureItem item, string? material, ReadMaterial? told)
    {
        var same = talk.Draft.Unsure.Where(other => other.Word == item.Word).ToList();
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Unsure = [.. talk.Draft.Unsure.Except(same)] } };
        if (material is not null && MaterialTable.TryFind(material, out var known) && known.Refusal is not null)
            talk.Farmer = talk.Farmer with
            {
                Draft = talk.Draft with { Refused = [.. talk.Draft.Refused.Append(material).Distinct()] },
            };
        else if (material is not null)
            foreach (var one in same)
                Stocktaking.Add(talk, new ReadMaterial(
                    material, told?.Amount ?? one.Amount, told?.Measure ?? one.Measure), one.InAddition);
        Stocktaking.Continue(talk);
    }
}
