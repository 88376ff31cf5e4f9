namespace HeapText.Dialog.Replies;

/// <summary>Cuts a text into known phrases and tells what each may stand for.</summary>
/// <param name="index">The phrases of all languages.</param>
/// <param name="language">The farmer's language, whose phrases go first.</param>
/// <param name="isAlone">True to take no phrase of another language.</param>
internal sealed class Tagger(PhraseIndex index, int language, bool isAlone = false)
{
    private readonly WordResolver _words = new(index, language);
    private readonly PhraseFinder _phrases = new(index, language, isAlone);

    public List<Tag> Read(string text)
    {
        var tokens = _words.Resolve(new Tokenizer(text, index.IsKnown).Read());
        var tags = new List<Tag>(tokens.Count);
        Token? head = null;
        for (var i = 0; i < tokens.Count;)
        {
            if (MeasureAround(tokens, i) is { } around)
            {
                tags.Add(TagOf(tokens[i], around));
                tags.Add(TagOf(tokens[i + 1], _phrases.Longest([tokens[i + 1]], 0)));
                i += around.Length + 1;
                continue;
            }

            if (head is not null && MayLackHead(tags) && WithHead(tokens, i, head, tags) is { } elided)
            {
                tags.Add(TagOf(tokens[i], elided));
                i += elided.Length - 1;
                continue;
            }

            var match = _phrases.Longest(tokens, i);
            if (IsMendedHere(tokens, i, match))
                continue;
            if (match.Literal == 0 && _words.FigureAndUnit(tokens[i]) is { } halves)
            {
                tokens.RemoveAt(i);
                tokens.InsertRange(i, halves);
                continue;
            }

            if (match.Length > 1 && IsThing(match)) head = tokens[i];
            else if (WithTail(tokens, i, match, tags) is { } started) match = started;
            if (WithWordBehind(tokens, i, match) is { } whole)
                match = whole;
            tags.Add(TagOf(tokens[i], match));
            i += Math.Max(1, match.Length);
        }

        return tags;
    }

    /// <summary>A slip in a word too short to be mended alone, or one that made another word, is one where it makes a
    /// material with its neighbour, as in "rice huks" or "banana leafs".</summary>
    private bool MendBesideOther(List<Token> tokens, int at, int start)
    {
        if (at < 0 || at >= tokens.Count || tokens[at].Kind != TokenKind.Word || !MayBeSlip(tokens[at]))
            return false;
        var written = tokens[at].Words;
        foreach (var word in index.OneEdit(tokens[at].Text, language))
        {
            tokens[at].Words = [word];
            if (_phrases.Longest(tokens, start) is { Length: > 1 } match && IsThing(match))
                return tokens[at].IsMended = true;
        }

        tokens[at].Words = written;
        return false;
    }

    /// <summary>True for a word that says nothing by itself.</summary>
    private bool MayBeSlip(Token token) => token.Words.Length == 0 || !HasAlone(token,
        static meaning => meaning.Kind is not (MeaningKind.Plain or MeaningKind.Ambiguous));

    /// <summary>Whether a word that stands in no phrase makes a material with the next, one of both mended.</summary>
    private bool IsMendedHere(List<Token> tokens, int at, PhraseFinder.Match match) => match.Length == 1
        && at + 1 < tokens.Count && tokens[at + 1].Kind == TokenKind.Word
        && _phrases.Longest(tokens, at + 1).Length == 1
        && (MendBesideOther(tokens, at, at) || MendBesideOther(tokens, at + 1, at));

    private Tag TagOf(Token token, PhraseFinder.Match match) => new(token, match.Meanings, match.Torn.Count > 0)
    {
        Choices = MaterialChoices.Of(match.Torn),
        StartsWithNot = match.Length > 1 && IsNot(token),
        IsElided = IsThing(match) && _phrases.IsLink(token),
        Words = match.Literal,
    };

    /// <summary>A measure of several words with its number after the first, as in "ndoo 3 ndogo": the words without the
    /// number; null where there is none.</summary>
    private PhraseFinder.Match? MeasureAround(List<Token> tokens, int start)
    {
        const int longestMeasure = 6;
        if (start + 2 >= tokens.Count || !IsMeasure(tokens[start]) || !IsNumber(tokens[start + 1]))
            return null;
        List<Token> others = [tokens[start], .. tokens.Skip(start + 2).Take(longestMeasure)];
        var match = _phrases.Longest(others, 0);
        return match.Length > 1 && match.Meanings.Any(meaning => meaning.Kind == MeaningKind.Measure) ? match : null;
    }

    /// <summary>At the start of an item of a list, where nothing is said not to be there.</summary>
    private static bool MayLackHead(List<Tag> tags)
    {
        if (tags is not [.., var last] || !(last.IsBreak || last.Is(Particle.And)))
            return false;
        for (var i = tags.Count - 1; i >= 0 && tags[i].Token.Kind != TokenKind.StrongBreak; i--)
            if (tags[i].Is(Particle.Absent) || tags[i].Is(Particle.Not))
                return false;
        return true;
    }

    /// <summary>A material of which only the end is said, as the sheep's in "mavi ya mbuzi na ya kondoo" or the cow's
    /// in "manure of goat and cow": the match with the first word of the material before put in front; null where that
    /// makes none.</summary>
    private PhraseFinder.Match? WithHead(List<Token> tokens, int at, Token head, List<Tag> tags)
    {
        const int longestEnd = 5;
        var isLink = _phrases.IsLink(tokens[at]);
        var isTied = tags.Count > 1 && tags[^1].Is(Particle.And) && tags[^2].First(MeaningKind.Material) is not null;
        if (!isLink && !isTied)
            return null;
        var end = isLink ? at + 1 : at;
        if (end >= tokens.Count || IsThing(_phrases.Longest(tokens, end)))
            return null;
        List<Token> whole = [head, .. tokens.Skip(at).Take(longestEnd)];
        var match = _phrases.Longest(whole, 0);
        return match.Length > end - at + 1 && IsThing(match) ? match : null;
    }

    /// <summary>A material of which only the start is said, as the goat's in "goat and cow manure": the match with the
    /// last word of the material after "and" put behind; null where that makes none.</summary>
    private PhraseFinder.Match? WithTail(
        List<Token> tokens, int start, PhraseFinder.Match match, List<Tag> tags)
    {
        const int mostStarts = 4;
        if (match.Length > 1 || tokens[start].Words.Length == 0 || IsThing(match)
            || (tags is [.., var before] && IsNumber(before.Token)))
            return null;
        for (var (at, starts) = (start + 1, 1); at + 1 < tokens.Count && starts < mostStarts; at += 2, starts++)
        {
            var isLast = IsAnd(tokens[at]);
            if (!isLast && tokens[at].Kind != TokenKind.WeakBreak)
                return null;
            var next = _phrases.Longest(tokens, at + 1);
            if (isLast && IsThing(next))
                return next.Length > 1 ? Joined(tokens[start], tokens[at + next.Length]) : null;
            if (next.Length > 1 || IsThing(next))
                return null;
        }

        return null;
    }

    /// <summary>A material whose last word stands behind its amount, as in "grass 3 sacks dry" and "samadi ndoo 3 (ya
    /// mbuzi)": the match with that word, which is taken out; null where there is none.</summary>
    private PhraseFinder.Match? WithWordBehind(List<Token> tokens, int start, PhraseFinder.Match match)
    {
        var amount = start + Math.Max(1, match.Length);
        if (!IsThing(match) || amount + 2 >= tokens.Count || !HasQuantity(tokens, amount))
            return null;
        var behind = _phrases.IsLink(tokens[amount + 2]) ? amount + 3 : amount + 2;
        if (behind >= tokens.Count || tokens[behind].Kind != TokenKind.Word || !IsEnd(tokens, behind + 1)
            || IsMeasure(tokens[behind]))
            return null;
        List<Token> whole = [.. tokens[start..amount], tokens[behind]];
        var found = _phrases.Longest(whole, 0);
        if (found.Length != whole.Count || !IsThing(found))
            return null;
        tokens.RemoveRange(amount + 2, behind - amount - 1);
        return found with { Length = match.Length };
    }

    private bool HasQuantity(List<Token> tokens, int at) => (IsNumber(tokens[at]) && IsMeasure(tokens[at + 1]))
        || (IsMeasure(tokens[at]) && IsNumber(tokens[at + 1]));

    private bool IsEnd(List<Token> tokens, int at) => at >= tokens.Count
        || tokens[at].Kind is TokenKind.WeakBreak or TokenKind.StrongBreak || IsAnd(tokens[at]);

    private PhraseFinder.Match? Joined(Token first, Token last) =>
        _phrases.Longest([first, last], 0) is { Length: 2 } whole && IsThing(whole)
            ? whole with { Length = 1 }
            : null;

    private static bool IsThing(PhraseFinder.Match match) => match.Meanings.Any(meaning => meaning.IsThing);

    private bool IsAnd(Token token) => HasAlone(token, static meaning => meaning.Is(Particle.And));

    private bool IsMeasure(Token token) => HasAlone(token, static meaning => meaning.Kind == MeaningKind.Measure);

    private bool IsNumber(Token token) => token.Kind == TokenKind.Number
        || HasAlone(token, static meaning => meaning.Kind == MeaningKind.Number);

    private bool IsNot(Token token) =>
        HasAlone(token, static meaning => meaning.Is(Particle.Not) || meaning.Is(Particle.Absent));

    /// <summary>Whether the word by itself has such a meaning.</summary>
    private bool HasAlone(Token token, Func<Meaning, bool> isMeant)
    {
        foreach (var word in token.Words)
            if (index.Next(PhraseIndex.Root, word) is var node and >= 0)
                foreach (var end in index.Ends(node))
                    if (isMeant(end.Meaning))
                        return true;
        return false;
    }
}
