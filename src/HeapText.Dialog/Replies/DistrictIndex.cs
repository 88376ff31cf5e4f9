namespace HeapText.Dialog.Replies;

/// <summary>The phrases of all languages with a district's own words on top. An own word stands before what the
/// languages have for it; the big tree is shared and stays as it is.</summary>
internal sealed class DistrictIndex : PhraseIndex
{
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> _nodes = [];
    private readonly Dictionary<int, (int Language, Meaning Meaning)[]> _ends = [];
    private readonly Spelling _spelling;

    /// <summary>Puts own words on top.</summary>
    /// <param name="shared">The phrases of all languages.</param>
    /// <param name="words">Each word once, in plain letters.</param>
    /// <param name="languages">How many languages there are: an own word is of each.</param>
    public DistrictIndex(PhraseIndex shared, IEnumerable<(string Word, Meaning Meaning)> words, int languages)
        : base(shared)
    {
        List<string> own = [];
        foreach (var (word, meaning) in words)
        {
            var id = base.Find(word);
            if (id < 0)
            {
                id = WordCount + own.Count;
                own.Add(word);
                _ids.Add(word, id);
            }
            var node = base.Next(Root, id);
            if (node < 0) _nodes.Add(id, node = NodeCount + _nodes.Count);
            // A crop stays one, so that its stalks and the like are what the word is said to be.
            var crop = node < NodeCount ? base.Ends(node).Where(end => end.Meaning.Is(Particle.OtherCrop)) : [];
            _ends.Add(node, [.. Enumerable.Range(0, languages).Select(language => (language, meaning)), .. crop]);
        }
        _spelling = new Spelling(own);
    }

    public override bool IsKnown(string word) => _ids.ContainsKey(word) || base.IsKnown(word);

    public override int Find(ReadOnlySpan<char> word) =>
        _ids.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var id) ? id : base.Find(word);

    public override ulong LanguagesOf(int word) => word < WordCount ? base.LanguagesOf(word) : ulong.MaxValue;

    public override int Next(int node, int word) =>
        node == Root && _nodes.TryGetValue(word, out var own) ? own : base.Next(node, word);

    public override IReadOnlyList<(int Language, Meaning Meaning)> Ends(int node) =>
        _ends.TryGetValue(node, out var own) ? own : base.Ends(node);

    public override List<(int Id, int Distance)> Near(string word)
    {
        var near = base.Near(word);
        near.AddRange(_spelling.Near(word).Select(known => (known.Id + WordCount, known.Distance)));
        return near;
    }
}
