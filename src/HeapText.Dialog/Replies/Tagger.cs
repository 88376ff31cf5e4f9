using System.Text.RegularExpressions;

namespace HeapText.Dialog.Replies;

/// <summary>Finds the longest known phrases in the words of a text.</summary>
/// <param name="index">The phrases of all languages.</param>
/// <param name="language">The farmer's language, whose phrases go first.</param>
/// <param name="isAlone">True to take no phrase of another language.</param>
internal sealed partial class Tagger(PhraseIndex index, int language, bool isAlone = false)
{
    private const int LongestGap = 3;
    private const int ShortestPart = 3;
    private const int ShortestOfMany = 3;
    private const int LongestJoined = 30;
    private const int MostLinks = 3;

    public List<Tag> Read(string text)
    {
        var tokens = Resolve(new Tokenizer(text, index.IsKnown).Read());
        var tags = new List<Tag>(tokens.Count);
        Token? head = null;
        for (var i = 0; i < tokens.Count;)
        {
            if (MeasureAround(tokens, i) is { } around)
            {
                tags.Add(TagOf(tokens[i], around));
                tags.Add(TagOf(tokens[i + 1], Longest([tokens[i + 1]], 0)));
                i += around.Length + 1;
                continue;
            }

            if (head is not null && MayLackHead(tags) && WithHead(tokens, i, head) is { } elided)
            {
                tags.Add(TagOf(tokens[i], elided));
                i += elided.Length - 1;
                continue;
            }

            var match = Longest(tokens, i);
            if (match.Length > 1 && match.Meanings.Any(meaning => meaning.IsThing)) head = tokens[i];
            tags.Add(TagOf(tokens[i], match));
            i += Math.Max(1, match.Length);
        }

        return tags;
    }

    private Tag TagOf(Token token, Match match) => new(token, match.Meanings, match.Torn.Count > 0)
    {
        Choices = MaterialChoices.Of(match.Torn),
        StartsWithNot = match.Length > 1 && IsNot(token),
        Words = match.Literal,
    };

    /// <summary>A measure of several words with its number after the first, as in "ndoo 3 ndogo": the words without the
    /// number; null where there is none.</summary>
    private Match? MeasureAround(List<Token> tokens, int start)
    {
        const int longestMeasure = 6;
        if (start + 2 >= tokens.Count || !IsMeasure(tokens[start]) || !IsNumber(tokens[start + 1]))
            return null;
        List<Token> others = [tokens[start], .. tokens.Skip(start + 2).Take(longestMeasure)];
        var match = Longest(others, 0);
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

    /// <summary>A material of which only the end is said, as the sheep's in "mavi ya mbuzi na ya kondoo": the match
    /// with the first word of the material before put in front; null where that makes none.</summary>
    private Match? WithHead(List<Token> tokens, int link, Token head)
    {
        const int longestEnd = 5;
        if (!IsLink(tokens[link]) || link + 1 >= tokens.Count
            || Longest(tokens, link + 1).Meanings.Any(meaning => meaning.IsThing))
            return null;
        List<Token> whole = [head, .. tokens.Skip(link).Take(longestEnd)];
        var match = Longest(whole, 0);
        return match.Length > 2 && match.Meanings.Any(meaning => meaning.IsThing) ? match : null;
    }

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

    private List<Token> Resolve(List<Token> raw)
    {
        var tokens = new List<Token>(raw.Count);
        foreach (var token in raw)
        {
            if (token.Kind == TokenKind.Word)
            {
                Resolve(token, tokens);
                continue;
            }

            // The 50 of a "50 kg bag" is a word of its name.
            if (index.Find(token.Text) is var known and >= 0)
                token.Words = [known];
            tokens.Add(token);
        }

        return tokens;
    }

    private void Resolve(Token token, List<Token> tokens)
    {
        var known = index.Find(token.Text);
        var stems = index.Stems(token.Text);
        if (known >= 0)
            token.Words = [known, .. stems.Select(stem => stem.Word), .. index.Alike(known, language)];
        else if (stems.Count > 0)
            token.Words = [.. stems.Select(stem => stem.Word)];
        else
        {
            tokens.AddRange(Guess(token));
            return;
        }

        tokens.Add(token);
        if (known < 0)
            tokens.AddRange(Endings(stems[0].Stem.Endings));
    }

    /// <summary>What a word that is not known may stand for: a slip, words run together, or worse slips.</summary>
    private IEnumerable<Token> Guess(Token token)
    {
        if (Calmed(token.Text) is { } calm)
        {
            token.Words = [calm];
            return [token];
        }

        var near = index.Near(token.Text);
        token.IsMended = true;
        token.Words = index.OneSlip(near, language);
        if (token.Words.Length > 0)
            return [token];
        if (PartsOf(token.Text) is { } parts)
            return parts;
        (token.Words, var endings) = index.Mend(token.Text, near, language);
        return Endings(endings).Prepend(token);
    }

    /// <summary>The word that "yesss" is without the letters it repeats; null when there is none.</summary>
    private int? Calmed(string word)
    {
        if (!Repeated().IsMatch(word))
            return null;
        var once = index.Find(Repeated().Replace(word, "$1"));
        var twice = once >= 0 ? once : index.Find(Repeated().Replace(word, "$1$1"));
        return twice >= 0 ? twice : null;
    }

    [GeneratedRegex(@"(.)\1\1+")]
    private static partial Regex Repeated();

    private List<Token>? PartsOf(string word) => index.Inflections(word, language).Select(stem => stem.Text)
        .Prepend(word).Select(Parts).FirstOrDefault(parts => parts is not null) ?? InflectedParts(word);

    /// <summary>Two words run together of which the second has a beginning of its own.</summary>
    private List<Token>? InflectedParts(string word)
    {
        for (var cut = ShortestPart; cut <= Math.Min(word.Length, LongestJoined) - ShortestPart; cut++)
            if (index.Find(word.AsSpan(0, cut)) >= 0
                && index.Inflections(word[cut..], language).FirstOrDefault(IsPart) is { } stem)
                return [Known(word[..cut]), Known(stem.Text)];
        return null;
    }

    private bool IsPart(Stem stem) => stem.Text.Length >= ShortestPart && index.Find(stem.Text) >= 0;

    /// <summary>Endings that are words of their own, such as one for "and".</summary>
    private IEnumerable<Token> Endings(IEnumerable<string> endings) =>
        endings.Where(ending => index.Find(ending) >= 0).Select(Known);

    /// <summary>The words, all of one language, of "drygrass" or "maviyangombe"; null when there are none.</summary>
    private List<Token>? Parts(string word)
    {
        if (word.Length > LongestJoined)
            return null;
        for (var cut = ShortestPart; cut <= word.Length - ShortestPart; cut++)
            if (index.Find(word.AsSpan(0, cut)) is var first and >= 0
                && index.Find(word.AsSpan(cut)) is var last and >= 0 && !index.IsLink(last)
                && (index.LanguagesOf(first) & index.LanguagesOf(last)) != 0)
                return [Known(word[..cut]), Known(word[cut..])];
        return PartsFrom(word, 0, ulong.MaxValue);
    }

    /// <summary>Three and more words run together, with links between them or none, but not at the end.</summary>
    private List<Token>? PartsFrom(string word, int start, ulong languages)
    {
        if (start == word.Length)
            return [];
        for (var end = word.Length; end > start + 1; end--)
        {
            var id = index.Find(word.AsSpan(start, end - start));
            if (id < 0 || (end - start < ShortestOfMany && !(start > 0 && index.IsLink(id)))
                || (end == word.Length && index.IsLink(id)))
                continue;
            var shared = languages & index.LanguagesOf(id);
            if (shared == 0 || PartsFrom(word, end, shared) is not { } rest)
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
        return apart with { Meanings = [.. apart.Meanings, .. Between(tokens, start, apart.Length)] };
    }

    private Meaning? AlarmWithin(List<Token> tokens, int start, int length)
    {
        for (var i = start + 1; i < start + length; i++)
            foreach (var meaning in LongestApart(tokens, i).Meanings)
                if (meaning.Kind == MeaningKind.Urgent)
                    return meaning;
        return null;
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

    private void Walk(List<Token> tokens, int start, int at, int node, List<int> ends, ref int length, int links = 0)
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

        if (at > start && links < MostLinks && IsLink(tokens[at]))
            Walk(tokens, start, at + 1, node, ends, ref length, links + 1);
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
            return new Match(length, literal, [], meanings.Any(meaning => meaning.IsThing) ? meanings : []);
        return new Match(length, literal, meanings, []);
    }

    /// <summary>Words that the phrase itself has: links passed over inside it do not make it weigh more.</summary>
    private int Literal(List<Token> tokens, int start, int length) =>
        length - tokens.Skip(start + 1).Take(length - 2).Count(IsLink);

    private bool IsLink(Token token) => token.Words is [var word] && index.IsLink(word);

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
