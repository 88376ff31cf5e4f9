namespace HeapText.Dialog.Replies;

/// <summary>The phrases of all languages in one tree of words.</summary>
internal sealed class PhraseIndex
{
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly List<string> _words = [];
    private readonly Dictionary<(int Node, int Word), int> _next = [];
    private readonly List<List<(int Language, Meaning Meaning)>> _ends = [[]];
    private readonly Dictionary<int, List<GapPhrase>> _gapPhrases = [];
    private readonly List<ulong> _languagesOfWord = [];
    private readonly HashSet<int> _links = [];
    private readonly Spelling _spelling;
    private readonly Affixes[] _affixes;
    private readonly Sounds[] _sounds;

    public PhraseIndex(IReadOnlyList<Lexicon> lexicons)
    {
        for (var language = 0; language < lexicons.Count; language++)
        {
            var phrases = lexicons[language].Phrases;
            var links = phrases.Where(phrase => phrase.Meaning.Is(Particle.Link) && phrase.Words.Count == 1)
                .Select(phrase => phrase.Words[0]).ToHashSet(StringComparer.Ordinal);
            foreach (var phrase in phrases)
                Add(phrase, language, links);
        }

        _spelling = new Spelling(_words);
        _affixes = [.. lexicons.Select(lexicon => lexicon.Affixes)];
        _sounds = [.. _affixes.Select((affixes, language) => new Sounds(
            _words.Select((word, id) => (word, id)).Where(known => IsOf(language, known.id)), affixes))];
    }

    /// <summary>A phrase whose parts may stand up to three words apart.</summary>
    public sealed record GapPhrase(int[][] Parts, int Language, Meaning Meaning);

    public const int Root = 0;

    public bool IsKnown(string word) => _ids.ContainsKey(word);

    public int Find(ReadOnlySpan<char> word) =>
        _ids.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var id) ? id : -1;

    /// <summary>The languages that have the word, one bit each.</summary>
    public ulong LanguagesOf(int word) => _languagesOfWord[word];

    public bool IsLink(int word) => _links.Contains(word);

    public int Next(int node, int word) => _next.GetValueOrDefault((node, word), -1);

    public IReadOnlyList<(int Language, Meaning Meaning)> Ends(int node) => _ends[node];

    public IReadOnlyList<GapPhrase> GapPhrases(int word) => _gapPhrases.GetValueOrDefault(word) ?? [];

    /// <summary>Words of the language that are one slip away: so near, no run-together words are looked for.</summary>
    public int[] OneSlip(string word, int language) => _spelling.Nearest(word, id => IsOf(language, id), 1).Ids;

    /// <summary>What a word may be without beginnings and endings in a language, the longest first.</summary>
    public IReadOnlyList<Stem> Inflections(string word, int language) => _affixes[language].Stems(word);

    /// <summary>The known words that are left of a word without beginnings and endings, the longest first.</summary>
    public IEnumerable<(int Word, Stem Stem)> Stems(string word) => _affixes.SelectMany((affixes, language) =>
        affixes.Stems(word).Select(stem => (Word: Find(stem.Text), Stem: stem))
            .Where(known => known.Word >= 0 && IsOf(language, known.Word)));

    /// <summary>Words of a language in another script that sound like a word of another language.</summary>
    public int[] Alike(int word, int language) => IsOf(language, word) ? [] : _sounds[language].Nearest(_words[word]);

    /// <summary>
    /// Words near a misspelled one: in the given language by letters, then by sound, else in the others. Where it has
    /// to be without its beginnings and endings, the endings are told.
    /// </summary>
    public (int[] Words, IReadOnlyList<string> Endings) Mend(string word, int language)
    {
        var own = NearestStem(word, language);
        if (own.Words.Length > 0)
            return own;
        if (_sounds[language].Nearest(word) is { Length: > 0 } alike)
            return (alike, []);
        return (_spelling.Nearest(word, _ => true).Ids, []);
    }

    private (int[] Words, IReadOnlyList<string> Endings) NearestStem(string word, int language)
    {
        var (best, endings) = (_spelling.Nearest(word, id => IsOf(language, id)), (IReadOnlyList<string>)[]);
        foreach (var stem in _affixes[language].Stems(word))
        {
            var nearest = _spelling.Nearest(stem.Text, id => IsOf(language, id));
            if (nearest.Distance < best.Distance)
                (best, endings) = (nearest, stem.Endings);
        }

        return (best.Ids, endings);
    }

    private bool IsOf(int language, int word) => (_languagesOfWord[word] & 1UL << language) != 0;

    private void Add(Phrase phrase, int language, HashSet<string> links)
    {
        if (phrase.Meaning.Is(Particle.Link))
            _links.Add(Id(phrase.Words[0], language));
        // Links inside a phrase are passed over in texts, so they are left out here too.
        var words = phrase.Words.Where((word, i) => i == 0 || i == phrase.Words.Count - 1 || !links.Contains(word));
        if (phrase.HasGap)
        {
            AddGapPhrase([.. words], language, phrase.Meaning);
            return;
        }

        var node = Root;
        foreach (var word in words)
            node = Child(node, Id(word, language));
        _ends[node].Add((language, phrase.Meaning));
    }

    private void AddGapPhrase(string[] words, int language, Meaning meaning)
    {
        var parts = new List<int[]>();
        var part = new List<int>();
        foreach (var word in words.Append(Phrase.Gap))
        {
            if (word != Phrase.Gap)
            {
                part.Add(Id(word, language));
                continue;
            }

            parts.Add([.. part]);
            part.Clear();
        }

        var first = parts[0][0];
        if (!_gapPhrases.TryGetValue(first, out var phrases))
            _gapPhrases[first] = phrases = [];
        phrases.Add(new GapPhrase([.. parts], language, meaning));
    }

    private int Child(int node, int word)
    {
        if (_next.TryGetValue((node, word), out var child))
            return child;
        _ends.Add([]);
        return _next[(node, word)] = _ends.Count - 1;
    }

    private int Id(string word, int language)
    {
        if (!_ids.TryGetValue(word, out var id))
        {
            _ids[word] = id = _words.Count;
            _words.Add(word);
            _languagesOfWord.Add(0);
        }

        _languagesOfWord[id] |= 1UL << language;
        return id;
    }
}
