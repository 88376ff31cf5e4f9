using System.Collections.Frozen;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Wording;

/// <summary>Writes a text with the letters of the GSM 7-bit alphabet where that leaves its meaning as it is, so that
/// one letter does not double what it takes.</summary>
/// <remarks>Marks such as dashes and quotes are the same in every language; letters are listed by each, in the part
/// <c>replace</c> of its text.yml, for what is one letter in two spellings here may be two letters there.</remarks>
public sealed class Replacements
{
    /// <summary>Marks and spaces that mean the same as plainer ones.</summary>
    private static readonly FrozenDictionary<char, string> Marks = new (string Letters, string Plain)[]
    {
        ("\u2018\u2019\u201a\u02bc\u02bb\u2032\u2039\u203a", "'"),
        ("\u201c\u201d\u201e\u00ab\u00bb", "\""),
        ("\u2010\u2011\u2012\u2013\u2014\u2212\u2022", "-"),
        ("\u00a0\u202f\u2009", " "),
        ("\u200b\u00ad\ufeff", ""),
        ("\u2026", "..."),
        ("\u00d7", "x"),
    }.SelectMany(mark => mark.Letters.Select(letter => (letter, mark.Plain))).ToFrozenDictionary(
        mark => mark.letter, mark => mark.Plain);

    private readonly Dictionary<char, string> _letters;
    private readonly HashSet<string> _keep;

    /// <summary>The replacements of a language.</summary>
    /// <param name="letters">What each letter is sent as; a capital follows from its small letter.</param>
    /// <param name="keep">Words that stay as they are, for without the letter they are other words.</param>
    public Replacements(IReadOnlyDictionary<char, string> letters, IEnumerable<string> keep)
    {
        _letters = new Dictionary<char, string>(letters);
        foreach (var (letter, plain) in letters)
            _letters.TryAdd(char.ToUpperInvariant(letter), plain.ToUpperInvariant());
        _keep = [.. keep.Select(word => word.ToLowerInvariant())];
    }

    /// <summary>The text in letters of the alphabet as far as that is safe; the same text where nothing is
    /// outside it.</summary>
    public string Apply(string text)
    {
        if (text.All(c => Gsm7.Cost(c) > 0)) return text;
        var plain = new System.Text.StringBuilder(text.Length);
        for (var at = 0; at < text.Length;)
        {
            var end = at;
            while (end < text.Length && char.IsLetter(text[end])) end++;
            var word = text.AsSpan(at, Math.Max(end - at, 1));
            if (_keep.Count > 0 && _keep.Contains(word.ToString().ToLowerInvariant())) plain.Append(word);
            else foreach (var c in word) plain.Append(Plain(c) ?? c.ToString());
            at += word.Length;
        }
        return plain.ToString();
    }

    /// <summary>True of a letter that the language itself lists as sent in a plainer form.</summary>
    public bool Covers(string letter) => letter.Length == 1 && _letters.ContainsKey(letter[0]);

    private string? Plain(char c)
    {
        if (Gsm7.Cost(c) > 0) return null;
        return Marks.GetValueOrDefault(c) ?? _letters.GetValueOrDefault(c);
    }
}
