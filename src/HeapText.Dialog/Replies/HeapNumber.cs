namespace HeapText.Dialog.Replies;

/// <summary>Which heap a text names, as in "heap 2 is hot".</summary>
internal static class HeapNumber
{
    private const int Highest = 99;

    /// <summary>The place of the number; -1 when no heap is named by one.</summary>
    public static int At(IReadOnlyList<Tag> tags)
    {
        for (var i = 1; i < tags.Count; i++)
            if (tags[i - 1].Is(Particle.Heap) && ValueOf(tags[i]) is not null && !Counts(tags, i))
                return i;
        return -1;
    }

    /// <summary>The number; null when no heap is named by one.</summary>
    public static int? Of(IReadOnlyList<Tag> tags) => At(tags) is var at and >= 0 ? ValueOf(tags[at]) : null;

    private static int? ValueOf(Tag tag)
    {
        var value = tag.Token is { Kind: TokenKind.Number, IsFraction: false, IsNegative: false }
            ? tag.Token.Value
            : tag.First(MeaningKind.Number)?.Value ?? 0;
        return value is >= 1 and <= Highest && value % 1 == 0 ? (int)value : null;
    }

    /// <summary>"The heap: 2 buckets of dung": the number belongs to what follows.</summary>
    private static bool Counts(IReadOnlyList<Tag> tags, int at) => at + 1 < tags.Count
        && (tags[at + 1].First(MeaningKind.Measure) is not null || tags[at + 1].Meanings.Any(m => m.IsThing)
            || tags[at + 1].Is(Particle.Counted) || tags[at + 1].Is(Particle.Days)
            || tags[at + 1].Token.Kind is TokenKind.Number or TokenKind.Range);
}
