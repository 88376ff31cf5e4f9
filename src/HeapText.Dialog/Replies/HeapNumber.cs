namespace HeapText.Dialog.Replies;

/// <summary>Which heap a text names, as in "heap 2 is hot".</summary>
internal static class HeapNumber
{
    private const int Highest = 99;

    /// <summary>The place of the number; -1 when no heap is named by one.</summary>
    public static int At(IReadOnlyList<Tag> tags)
    {
        for (var i = 1; i < tags.Count; i++)
            if (IsAt(tags, i))
                return i;
        return -1;
    }

    private static bool IsAt(IReadOnlyList<Tag> tags, int at) =>
        tags[at - 1].Is(Particle.Heap) && ValueOf(tags[at]) is not null && !Counts(tags, at);

    /// <summary>The number; null when no heap is named by one.</summary>
    public static int? Of(IReadOnlyList<Tag> tags) => At(tags) is var at and >= 0 ? ValueOf(tags[at]) : null;

    /// <summary>The text in as many pieces as it tells of heaps, as "heap 1 hot, heap 2 cold" does; whole when it names
    /// one or none.</summary>
    public static IReadOnlyList<List<Tag>> Split(List<Tag> tags)
    {
        var numbers = Enumerable.Range(1, Math.Max(0, tags.Count - 1)).Where(at => IsAt(tags, at)).ToList();
        if (numbers.Select(at => ValueOf(tags[at])).Distinct().Count() < 2)
            return [tags];
        // "Hot heap 1, cold heap 2": what is said stands before its heap.
        var isBefore = tags.Take(numbers[0]).Any(tag => tag.Meanings.Any(meaning => meaning.IsCheck));
        List<int> starts = [0, .. numbers.Skip(isBefore ? 0 : 1).Select(at => isBefore ? at + 1 : at - 1)];
        if (isBefore)
            starts.RemoveAt(starts.Count - 1);
        return [.. starts.Select((start, i) => tags[start..(i + 1 < starts.Count ? starts[i + 1] : tags.Count)])];
    }

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
