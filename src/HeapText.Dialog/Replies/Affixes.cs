namespace HeapText.Dialog.Replies;

/// <summary>Beginnings and endings that a language hangs on its words, such as those for "of", "the" and
/// "and".</summary>
/// <param name="Before">Normalised beginnings.</param>
/// <param name="After">Normalised endings.</param>
internal sealed record Affixes(IReadOnlyList<string> Before, IReadOnlyList<string> After)
{
    private const int ShortestStem = 2;
    private const int LongestWord = 40;
    private const int MostBefore = 2;
    private const int MostAfter = 3;

    public static Affixes None { get; } = new([], []);

    /// <summary>What is left of a word without them, the longest first; the word itself is not among it.</summary>
    public IReadOnlyList<Stem> Stems(string word)
    {
        if (word.Length > LongestWord || !HasAny(word))
            return [];
        var fronts = new List<string> { word };
        for (int depth = 0, from = 0; depth < MostBefore; depth++)
        {
            var upto = fronts.Count;
            for (; from < upto; from++)
                fronts.AddRange(Before.Where(b => fronts[from].StartsWith(b, StringComparison.Ordinal))
                    .Select(b => fronts[from][b.Length..]).ToList());
        }

        var stems = fronts.Select(front => new Stem(front, [])).ToList();
        for (int depth = 0, from = 0; depth < MostAfter; depth++)
        {
            var upto = stems.Count;
            for (; from < upto; from++)
                stems.AddRange(After.Where(a => stems[from].Text.EndsWith(a, StringComparison.Ordinal))
                    .Select(a => new Stem(stems[from].Text[..^a.Length], [a, .. stems[from].Endings])).ToList());
        }

        return
        [
            .. stems.Where(stem => stem.Text.Length >= ShortestStem && stem.Text.Length < word.Length)
                .DistinctBy(stem => stem.Text).OrderByDescending(stem => stem.Text.Length),
        ];
    }

    private bool HasAny(string word)
    {
        foreach (var affix in Before)
            if (word.StartsWith(affix, StringComparison.Ordinal))
                return true;
        foreach (var affix in After)
            if (word.EndsWith(affix, StringComparison.Ordinal))
                return true;
        return false;
    }
}

/// <summary>A word without its beginnings and endings.</summary>
/// <param name="Text">What is left.</param>
/// <param name="Endings">The endings taken off, in order.</param>
internal sealed record Stem(string Text, IReadOnlyList<string> Endings);
