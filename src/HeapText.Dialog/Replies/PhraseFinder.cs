namespace HeapText.Dialog.Replies;

/// <summary>Finds the longest known phrase at a place of a text.</summary>
/// <param name="index">The phrases of all languages.</param>
/// <param name="language">The farmer's language, whose phrases go first.</param>
/// <param name="isAlone">True to take no phrase of another language.</param>
internal sealed class PhraseFinder(PhraseIndex index, int language, bool isAlone)
{
    private const int LongestGap = 3;
    private const int MostLinks = 3;

    /// <summary>A phrase in a text.</summary>
    /// <param name="Length">How many tokens it takes; 1 where there is none.</param>
    /// <param name="Literal">How many words of its own it has; 0 where there is none.</param>
    /// <param name="Meanings">What it stands for.</param>
    /// <param name="Torn">What a misspelled word may stand for, when that is several things.</param>
    public readonly record struct Match(
        int Length, int Literal, IReadOnlyList<Meaning> Meanings, IReadOnlyList<Meaning> Torn);

    public Match Longest(List<Token> tokens, int start)
    {
        var (ends, length) = Reached(tokens, start);
        var isMended = tokens.GetRange(start, length).Any(token => token.IsMended);
        var plain = length == 0
            ? new Match(1, 0, [], [])
            : Merge(isMended ? ends : ends.GetRange(0, 1), length, Literal(tokens, start, length));
        var apart = LongestApart(tokens, start);
        if (apart.Literal <= plain.Literal)
            return plain;
        // "Mais mon fils est malade" names no sick maize.
        if (apart.Meanings.All(meaning => meaning.IsThing) && AlarmWithin(tokens, start, apart.Length) is { } alarm)
            return apart with { Meanings = [alarm] };
        // "Come quick, my heap is on fire" must not be heard as a visit only.
        if (StartsAlarm(tokens, start + 1, apart.Length - 1))
            return plain;
        return apart with { Meanings = [.. apart.Meanings, .. Between(tokens, start, apart.Length)] };
    }

    /// <summary>The longest phrases at a place. One of the farmer's language goes before a longer one of another in
    /// whose words there is nothing foreign.</summary>
    private (List<int> Ends, int Length) Reached(List<Token> tokens, int start)
    {
        var (ends, length) = (new List<int>(), 0);
        Walk(tokens, start, start, PhraseIndex.Root, ends, ref length);
        if (length < 2 || ends.Exists(IsOwn) || !AreOwnWords(tokens, start, length))
            return (ends, length);
        var (own, reached) = (new List<int>(), 0);
        Walk(tokens, start, start, PhraseIndex.Root, own, ref reached, mustBeOwn: true);
        return reached > 0 ? (own, reached) : (ends, length);
    }

    private bool IsOwn(int node)
    {
        foreach (var end in index.Ends(node))
            if (end.Language == language)
                return true;
        return false;
    }

    private bool AreOwnWords(List<Token> tokens, int start, int length)
    {
        for (var i = start; i < start + length; i++)
            if (!Array.Exists(tokens[i].Words, IsOwnWord))
                return false;
        return true;
    }

    private bool IsOwnWord(int word) => (index.LanguagesOf(word) & 1UL << language) != 0;

    private Meaning? AlarmWithin(List<Token> tokens, int start, int length)
    {
        for (var i = start + 1; i < start + length; i++)
            foreach (var meaning in LongestApart(tokens, i).Meanings)
                if (meaning.Kind == MeaningKind.Urgent)
                    return meaning;
        return null;
    }

    /// <summary>Whether an alarm starts among the words and ends behind them.</summary>
    private bool StartsAlarm(List<Token> tokens, int start, int length)
    {
        for (var i = start; i < start + length; i++)
        {
            var (ends, reached) = (new List<int>(), 0);
            Walk(tokens, i, i, PhraseIndex.Root, ends, ref reached);
            if (i + reached > start + length
                && Merge(ends, reached, reached).Meanings.Any(meaning => meaning.Kind == MeaningKind.Urgent))
                return true;
        }

        return false;
    }

    /// <summary>Alarms and days are heard even among words that do not matter.</summary>
    private IEnumerable<Meaning> Between(List<Token> tokens, int start, int length)
    {
        for (var i = start; i < start + length; i++)
        {
            var (ends, reached) = (new List<int>(), 0);
            Walk(tokens, i, i, PhraseIndex.Root, ends, ref reached);
            if (reached == 0 || i + reached > start + length)
                continue;
            foreach (var meaning in Merge(ends, reached, reached).Meanings)
                if (meaning.Kind is MeaningKind.Urgent or MeaningKind.DaysAgo)
                    yield return meaning;
        }
    }

    private void Walk(
        List<Token> tokens, int start, int at, int node, List<int> ends, ref int length, int links = 0,
        bool mustBeOwn = false)
    {
        if (at >= tokens.Count)
            return;
        foreach (var word in tokens[at].Words)
        {
            var next = index.Next(node, word);
            if (next < 0)
                continue;
            if (!mustBeOwn || IsOwn(next)) Note(next, at + 1 - start, ends, ref length);
            Walk(tokens, start, at + 1, next, ends, ref length, mustBeOwn: mustBeOwn);
        }

        if (at > start && links < MostLinks && IsLink(tokens[at]))
            Walk(tokens, start, at + 1, node, ends, ref length, links + 1, mustBeOwn);
    }

    private void Note(int node, int reached, List<int> ends, ref int length)
    {
        if (reached < length || index.Ends(node).Count == 0)
            return;
        if (reached > length)
            ends.Clear();
        length = reached;
        if (!ends.Contains(node))
            ends.Add(node);
    }

    /// <summary>Meanings of the phrases that end here; a slip that may be two materials stays torn.</summary>
    private Match Merge(List<int> ends, int length, int literal)
    {
        var all = ends.SelectMany(index.Ends).ToList();
        var own = all.Where(end => end.Language == language).ToList();
        var from = own.Count > 0 || isAlone ? own : all;
        var meanings = from.Select(end => end.Meaning).Distinct().ToList();
        if (ends.Count > 1 && meanings.Count > 1)
        {
            // "Buckest" may be "bucket" or "buckets": what both stand for is sure.
            var shared = meanings.Where(meaning => ends.TrueForAll(end => Means(end, meaning))).ToList();
            if (shared.Count > 0)
                return new Match(length, literal, shared, []);
            return new Match(length, literal, [], meanings.Any(meaning => meaning.IsThing) ? meanings : []);
        }

        return new Match(length, literal, meanings, []);
    }

    private bool Means(int end, Meaning meaning)
    {
        foreach (var other in index.Ends(end))
            if (other.Meaning == meaning)
                return true;
        return false;
    }

    /// <summary>Words that the phrase itself has: links passed over inside it do not make it weigh more.</summary>
    private int Literal(List<Token> tokens, int start, int length) =>
        length - tokens.Skip(start + 1).Take(length - 2).Count(IsLink);

    public bool IsLink(Token token) => token.Words is [var word] && index.IsLink(word);

    private Match LongestApart(List<Token> tokens, int start)
    {
        var best = new Match(1, 0, [], []);
        foreach (var word in tokens[start].Words)
        {
            foreach (var phrase in index.GapPhrases(word))
            {
                if (phrase.Words <= best.Literal)
                    break;
                if (isAlone && phrase.Language != language)
                    continue;
                if (EndApart(tokens, start, phrase.Parts) is var end and > 0)
                    best = new Match(end - start, phrase.Words, [phrase.Meaning], []);
            }
        }

        return best;
    }

    private int EndApart(List<Token> tokens, int start, int[][] parts)
    {
        var at = MatchPart(tokens, start, parts[0]);
        for (var p = 1; p < parts.Length && at > 0; p++)
        {
            var found = -1;
            for (var gap = 0; gap <= LongestGap && at + gap < tokens.Count && found < 0; gap++)
            {
                found = MatchPart(tokens, at + gap, parts[p]);
                if (tokens[at + gap].Kind is TokenKind.WeakBreak or TokenKind.StrongBreak)
                    break;
            }

            at = found;
        }

        return at;
    }

    private int MatchPart(List<Token> tokens, int at, int[] part)
    {
        foreach (var word in part)
        {
            for (var links = 0; links < MostLinks && at < tokens.Count && !tokens[at].Words.Contains(word)
                && IsLink(tokens[at]); links++)
                at++;
            if (at >= tokens.Count || !tokens[at].Words.Contains(word))
                return -1;
            at++;
        }

        return at;
    }
}
