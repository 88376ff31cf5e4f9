namespace HeapText.Dialog.Replies;

/// <summary>Tells which unknown words stand like materials: somebody has three buckets of them, or lists
/// them.</summary>
internal static class UnknownThings
{
    private const int ShortestUnmeasured = 4;

    /// <summary>Makes things of them, so that their amounts are given to no other material.</summary>
    public static void Name(List<Part> parts)
    {
        var known = parts.Count(part => part.Kind == PartKind.Thing);
        for (var start = 0; start < parts.Count;)
        {
            var end = start;
            while (end < parts.Count && !IsEnd(parts[end]))
                end++;
            if (Find(parts, start, end, known) is var at and >= 0)
                parts[at] = new Part(PartKind.Thing) { Word = parts[at].Word };
            start = end + 1;
        }
    }

    private static bool MayBeThing(Part part) =>
        part.Kind == PartKind.Unknown || part is { Kind: PartKind.Counted or PartKind.Other, IsNearPlain: true };

    private static bool IsEnd(Part part) => part.IsBreak || part.Kind == PartKind.And;

    /// <summary>The place of the word in a clause; -1 when there is none.</summary>
    private static int Find(List<Part> parts, int start, int end, int known)
    {
        var clause = parts.GetRange(start, end - start);
        var amounts = clause.Count(part => part.Kind == PartKind.Amount);
        var things = clause.Count(part => part.Kind == PartKind.Thing);
        if (things > 0)
            return amounts > things ? At(part => !part.IsNearPlain, isCounted: true) : -1;
        if (amounts > 0 && clause.Any(part => part.Kind == PartKind.Measure))
            return At(part => !part.IsNearPlain) is var unknown and >= 0
                ? unknown
                : At(part => part.IsNearPlain, isCounted: true);
        if (amounts > 0 && known > 0)
            return At(part => part.Word.Length >= ShortestUnmeasured && (!part.IsNearPlain || IsWholeItem(clause)),
                isCounted: true);
        // Between two materials; what stands before or after all of them may as well be a name.
        return clause is [{ IsAlone: true } only] && only.Word.Length >= ShortestUnmeasured
            && IsListed(parts, start, end) ? start : -1;

        int At(Func<Part, bool> isMeant, bool isCounted = false)
        {
            for (var i = start; i < end; i++)
                if (MayBeThing(parts[i]) && isMeant(parts[i])
                    && (!isCounted || IsQuantity(i - 1) || IsQuantity(i + 1)))
                    return i;
            return -1;
        }

        bool IsQuantity(int i) => i >= start && i < end && parts[i].IsQuantity;
    }

    /// <summary>"3 florgs" and no more: not a slip of a word that only happens to be near.</summary>
    private static bool IsWholeItem(List<Part> clause) =>
        clause is [{ Kind: PartKind.Amount }, { Kind: PartKind.Unknown }];

    private static bool IsListed(List<Part> parts, int start, int end) =>
        parts.Take(start).Any(part => part.Kind == PartKind.Thing)
        && parts.Skip(end).Any(part => part.Kind == PartKind.Thing);
}
