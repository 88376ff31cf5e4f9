namespace HeapText.Dialog.Replies;

/// <summary>Tells whether a text says that something is an emergency.</summary>
internal static class Alarm
{
    /// <summary>True when there is an alarm. A single word such as "fire" is none among amounts of a material, as in
    /// "2 tins of ash from the fire"; beside such a list it is. Nor is a word that is itself an excuse, as one for
    /// "I am ill".</summary>
    public static bool IsIn(IReadOnlyList<Tag> tags)
    {
        for (var i = 0; i < tags.Count; i++)
            if (tags[i].First(MeaningKind.Urgent) is not null && !IsExcuse(tags[i])
                && (tags[i].Words > 1 || !IsOfStock(tags, i)))
                return true;
        return false;
    }

    private static bool IsExcuse(Tag tag) => tag.Words == 1 && tag.Meanings.Any(meaning => meaning.Is(Intent.Delay));

    private static bool IsOfStock(IReadOnlyList<Tag> tags, int at)
    {
        var start = at;
        while (start > 0 && !IsEnd(tags[start - 1])) start--;
        var clause = tags.Skip(start).TakeWhile((tag, i) => start + i <= at || !IsEnd(tag)).ToList();
        return clause.Any(tag => tag.Meanings.Any(meaning => meaning.IsThing)) && clause.Any(IsQuantity);
    }

    private static bool IsEnd(Tag tag) => tag.IsBreak || tag.Is(Particle.And);

    private static bool IsQuantity(Tag tag) => tag.Token.Kind == TokenKind.Number
        || tag.Meanings.Any(m => m.Kind is MeaningKind.Number or MeaningKind.Fraction or MeaningKind.Measure);
}
