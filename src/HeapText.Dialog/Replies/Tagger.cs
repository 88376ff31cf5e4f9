namespace HeapText.Dialog.Replies;

/// <summary>A stretch of a text and what it may stand for.</summary>
/// <param name="Token">Its first token.</param>
/// <param name="Meanings">In the farmer's language if there, else in the others; empty when unknown.</param>
/// <param name="IsTorn">True when the misspelled word may stand for different things.</param>
internal sealed record Tag(Token Token, IReadOnlyList<Meaning> Meanings, bool IsTorn = false)
{
    /// <summary>Keys of the materials that a torn word may stand for; empty where it may be no material.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    public bool IsBreak => Token.Kind is TokenKind.WeakBreak or TokenKind.StrongBreak;

    public bool IsUnknown => Token.Kind == TokenKind.Word && Meanings.Count == 0;

    public bool Is(Particle particle) => Meanings.Any(meaning => meaning.Is(particle));

    public Meaning? First(MeaningKind kind)
    {
        foreach (var meaning in Meanings)
            if (meaning.Kind == kind)
                return meaning;
        return null;
    }
}

/// <summary>Finds the longest known phrases in the words of a text.</summary>
internal sealed class Tagger(PhraseIndex index, int language)
{
    private const int LongestGap = 3;
    private const int ShortestPart = 3;
    private const int ShortestOfMany = 3;
    private const int LongestJoined = 30;

    public List<Tag> Read(string text)
    {
        var tokens = Resolve(new Tokenizer(text, index.IsKnown).Read());
        var tags = new List<Tag>(tokens.Count);
        for (var i = 0; i < tokens.Count;)
        {
            var match = Longest(tokens, i);
            tags.Add(new Tag(tokens[i], match.Meanings, match.Torn.Count > 0)
            {
                Choices = MaterialChoices.Of(match.Torn),
            });
            i += Math.Max(1, match.Length);
        }

        return tags;
    }

    private List<Token> Resolve(List<Token> raw)
    {
        var tokens = new List<Token>(raw.Count);
        foreach (var token in raw)
        {
            var known = token.Text.Length > 0 ? index.Find(token.Text) : -1;
            if (known >= 0)
                token.Words = [known];
            else if (token.Kind == TokenKind.Word && Parts(token.Text) is { } parts)
            {
                tokens.AddRange(parts);
                continue;
            }
            else if (token.Kind == TokenKind.Word)
                (token.Words, token.IsMended) = (index.Mend(token.Text, language), true);

            tokens.Add(token);
        }

        return tokens;
    }

    /// <summary>The known words of "drygrass" or "maviyangombe"; null when it is not made of known words.</summary>
    private List<Token>? Parts(string word)
    {
        if (word.Length > LongestJoined)
            return null;
        for (var cut = ShortestPart; cut <= word.Length - ShortestPart; cut++)
            if (index.Find(word.AsSpan(0, cut)) >= 0 && index.Find(word.AsSpan(cut)) >= 0)
                return [Known(word[..cut]), Known(word[cut..])];
        return PartsFrom(word, 0);
    }

    /// <summary>Three and more words run together, with links between them or none.</summary>
    private List<Token>? PartsFrom(string word, int start)
    {
        if (start == word.Length)
            return [];
        for (var end = word.Length; end > start + 1; end--)
        {
            var id = index.Find(word.AsSpan(start, end - start));
            if (id < 0 || (end - start < ShortestOfMany && !(start > 0 && index.IsLink(id))))
                continue;
            if (PartsFrom(word, end) is not { } rest)
                continue;
            rest.Insert(0, Known(word[start..end]));
            return rest;
        }

        return null;
    }

    private Token Known(string word) => new() { Kind = TokenKind.Word, Text = word, Words = [index.Find(word)] };

    private readonly record struct Match(
        int Length, int Literal, IReadOnlyList<Meaning> Meanings, IReadOnlyList<Meaning> Torn);

    private Match Longest(List<Token> tokens, int start)
    {
        var ends = new List<int>();
        var length = 0;
        Walk(tokens, start, start, PhraseIndex.Root, ends, ref length);
        var plain = length == 0 ? new Match(1, 0, [], []) : Merge(ends, length);
        var apart = LongestApart(tokens, start);
        return apart.Literal > plain.Literal ? apart : plain;
    }

    private void Walk(List<Token> tokens, int start, int at, int node, List<int> ends, ref int length)
    {
        if (at >= tokens.Count)
            return;
        foreach (var word in tokens[at].Words)
        {
            var next = index.Next(node, word);
            if (next < 0)
                continue;
            Note(next, at + 1 - start, ends, ref length);
            Walk(tokens, start, at + 1, next, ends, ref length);
        }

        if (at > start && tokens[at].Words is [var link] && index.IsLink(link))
            Walk(tokens, start, at + 1, node, ends, ref length);
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
    private Match Merge(List<int> ends, int length)
    {
        var all = ends.SelectMany(index.Ends).ToList();
        var own = all.Where(end => end.Language == language).ToList();
        var from = own.Count > 0 ? own : all;
        var meanings = from.Select(end => end.Meaning).Distinct().ToList();
        if (ends.Count > 1 && meanings.Count > 1)
            return new Match(length, length, [], meanings.Any(meaning => meaning.IsThing) ? meanings : []);
        return new Match(length, length, meanings, []);
    }

    private Match LongestApart(List<Token> tokens, int start)
    {
        var best = new Match(1, 0, [], []);
        foreach (var word in tokens[start].Words)
        {
            foreach (var phrase in index.GapPhrases(word))
            {
                var literal = phrase.Parts.Sum(part => part.Length);
                var end = literal > best.Literal ? EndApart(tokens, start, phrase.Parts) : -1;
                if (end > 0)
                    best = new Match(end - start, literal, [phrase.Meaning], []);
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
            while (at < tokens.Count && !tokens[at].Words.Contains(word) && tokens[at].Words is [var link]
                   && index.IsLink(link))
                at++;
            if (at >= tokens.Count || !tokens[at].Words.Contains(word))
                return -1;
            at++;
        }

        return at;
    }
}
