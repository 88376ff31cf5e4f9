using System.Globalization;
using System.Text.RegularExpressions;

namespace HeapText.Dialog.Replies;

/// <summary>Tells which known words each word of a text may be: spelled right, mended, run together.</summary>
/// <param name="index">The phrases of all languages.</param>
/// <param name="language">The farmer's language, whose words go first.</param>
internal sealed partial class WordResolver(PhraseIndex index, int language)
{
    private const int ShortestPart = 3;
    private const int ShortestOfMany = 3;
    private const int LongestJoined = 30;
    private const int LongestFigure = 6;

    /// <summary>The tokens of a text with their words, in place or as those they are made of.</summary>
    public List<Token> Resolve(List<Token> raw)
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

    /// <summary>The figure and the unit of a word that has both, as "50kg"; null for any other.</summary>
    public List<Token>? FigureAndUnit(Token token)
    {
        var unit = token.Text.AsSpan().TrimStart("0123456789");
        var figure = token.Text.AsSpan(0, token.Text.Length - unit.Length);
        if (figure.Length is 0 or > LongestFigure || unit.Length == 0 || !IsMeasure(unit))
            return null;
        var value = int.Parse(figure, NumberStyles.None, CultureInfo.InvariantCulture);
        var number = new Token { Kind = TokenKind.Number, Text = figure.ToString(), Value = value };
        if (index.Find(figure) is var known and >= 0)
            number.Words = [known];
        return [number, Known(unit.ToString())];
    }

    private bool IsMeasure(ReadOnlySpan<char> word) => index.Find(word) is var id and >= 0
        && index.Next(PhraseIndex.Root, id) is var node and >= 0
        && index.Ends(node).Any(end => end.Meaning.Kind == MeaningKind.Measure);

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
}
