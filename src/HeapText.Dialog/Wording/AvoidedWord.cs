using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Wording;

/// <summary>A word that farmers do not know. A star at its end stands for any ending.</summary>
/// <param name="Pattern">As written, such as "decompos*" or "organic matter".</param>
/// <param name="Instead">What to say instead.</param>
public sealed record AvoidedWord(string Pattern, string Instead)
{
    private readonly string[] _words = [.. Letters.Words(Pattern)];

    /// <summary>The word or words of a text that it means; null when the text has none. Capitals and accents make no
    /// difference.</summary>
    public string? FoundIn(string text)
    {
        var words = Letters.Words(text).ToList();
        for (var at = 0; at + _words.Length <= words.Count; at++)
            if (_words.Length > 0 && MatchesAt(words, at)) return string.Join(' ', words.Skip(at).Take(_words.Length));
        return null;
    }

    private bool MatchesAt(List<string> words, int at)
    {
        var last = _words.Length - 1;
        for (var i = 0; i < last; i++)
            if (words[at + i] != _words[i]) return false;
        return Pattern.EndsWith('*')
            ? words[at + last].StartsWith(_words[last], StringComparison.Ordinal)
            : words[at + last] == _words[last];
    }
}
