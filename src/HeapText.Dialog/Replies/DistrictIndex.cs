namespace HeapText.Dialog.Replies;

/// <summary>The phrases of all languages with a district's own words on top. An own word stands before what the
/// languages have for it; the big tree is shared and stays as it is.</summary>
internal sealed class DistrictIndex : PhraseIndex
{
    private readonly PhraseIndex _shared;
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly List<string> _words = [];
    private readonly Dictionary<int, int> _nodes = [];
    private readonly Dictionary<int, (int Language, Meaning Meaning)[]> _ends = [];
    private readonly Spelling _spelling;

    /// <summary>Puts own words on top.</summary>
    /// <param name="shared">The phrases of all languages.</param>
    /// <param name="words">Each word once, in plain letters.</param>
    /// <param name="languages">How many languages there are: an own word is of each.</param>
    public DistrictIndex(PhraseIndex shared, IEnumerable<(string Word, Meaning Meaning)> words, int languages)
        : base([])
    {
        _shared = shared;
        foreach (var (word, meaning) in words)
        {
            var id = shared.Find(word);
            if (id < 0)
            {
                id = shared.WordCount + _words.Count;
                _words.Add(word);
                _ids.Add(word, id);
            }
            var node = shared.Next(Root, id);
            if (node < 0) _nodes.Add(id, node = shared.NodeCount + _nodes.Count);
            _ends.Add(node, [.. Enumerable.Range(0, languages).Select(language => (language, meaning))]);
        }
        _spelling = new Spelling(_words);
    }

    public override bool IsKnown(string word) => _ids.ContainsKey(word) || _shared.IsKnown(word);

    public override int Find(ReadOnlySpan<char> word) =>
        _ids.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var id) ? id : _shared.Find(word);

    public override bool IsLink(int word) => _shared.IsLink(word);

    public override int Next(int node, int word) =>
        node == Root && _nodes.TryGetValue(word, out var own) ? own : _shared.Next(node, word);

    public override IReadOnlyList<(int Language, Meaning Meaning)> Ends(int node) =>
        _ends.TryGetValue(node, out var own) ? own : _shared.Ends(node);

    public override IReadOnlyList<GapPhrase> GapPhrases(int word) => _shared.GapPhrases(word);

    public override int[] Mend(string word, int language)
    {
        var others = _shared.Mend(word, language);
        int[] own = [.. _spelling.Nearest(word, _ => true).Select(id => id + _shared.WordCount)];
        if (own.Length == 0 || others.Length == 0) return own.Length == 0 ? others : own;
        var nearer = Spelling.Distance(word, _words[own[0] - _shared.WordCount])
            .CompareTo(Spelling.Distance(word, _shared.WordOf(others[0])));
        return nearer < 0 ? own : nearer > 0 ? others : [.. own, .. others];
    }
}
