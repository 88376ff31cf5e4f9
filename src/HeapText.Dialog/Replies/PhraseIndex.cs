namespace HeapText.Dialog.Replies;

/// <summary>The phrases of all languages in one tree of words.</summary>
internal class PhraseIndex
{
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly List<string> _words = [];
    private readonly Dictionary<long, int> _next = [];
    private readonly List<(int Language, Meaning Meaning)[]> _ends = [[]];
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

        foreach (var word in _gapPhrases.Keys)
            _gapPhrases[word] = [.. _gapPhrases[word].OrderByDescending(phrase => phrase.Words)];
        _spelling = new Spelling(_words);
        _affixes = [.. lexicons.Select(lexicon => lexicon.Affixes)];
        _sounds = [.. _affixes.Select((affixes, language) => new Sounds(
            _words.Select((word, id) => (word, id)).Where(known => IsOf(language, known.id)), affixes))];
    }

    /// <summary>The same phrases, for others to be put on top.</summary>
    protected PhraseIndex(PhraseIndex shared)
    {
        (_ids, _words, _next, _ends) = (shared._ids, shared._words, shared._next, shared._ends);
        (_gapPhrases, _languagesOfWord, _links) = (shared._gapPhrases, shared._languagesOfWord, shared._links);
        (_spelling, _affixes, _sounds) = (shared._spelling, shared._affixes, shared._sounds);
    }

    /// <summary>How many known words there are: their ids are those below.</summary>
    protected int WordCount => _words.Count;

    /// <summary>How many places in the tree there are: their numbers are those below.</summary>
    protected int NodeCount => _ends.Count;

    /// <summary>A phrase whose parts may stand up to three words apart.</summary>
    /// <param name="Parts">The words of each part.</param>
    /// <param name="Words">How many they are together.</param>
    /// <param name="Language">Whose phrase it is.</param>
    /// <param name="Meaning">What it stands for.</param>
    public sealed record GapPhrase(int[][] Parts, int Words, int Language, Meaning Meaning);

    public const int Root = 0;

    public virtual bool IsKnown(string word) => _ids.ContainsKey(word);

    public virtual int Find(ReadOnlySpan<char> word) =>
        _ids.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var id) ? id : -1;

    /// <summary>The languages that have the word, one bit each.</summary>
    public virtual ulong LanguagesOf(int word) => _languagesOfWord[word];

    public bool IsLink(int word) => _links.Contains(word);

    public virtual int Next(int node, int word) => _next.GetValueOrDefault(Step(node, word), -1);

    public virtual IReadOnlyList<(int Language, Meaning Meaning)> Ends(int node) => _ends[node];

    /// <summary>The phrases with gaps that begin with a word, those with the most words first.</summary>
    public IReadOnlyList<GapPhrase> GapPhrases(int word) => _gapPhrases.GetValueOrDefault(word) ?? [];

    /// <summary>What a word may be without beginnings and endings in a language, the longest first.</summary>
    public IReadOnlyList<Stem> Inflections(string word, int language) => _affixes[language].Stems(word);

    /// <summary>The known words that are left of a word without beginnings and endings, the longest first.</summary>
    public List<(int Word, Stem Stem)> Stems(string word)
    {
        List<(int Word, Stem Stem)> known = [];
        for (var language = 0; language < _affixes.Length; language++)
            foreach (var stem in _affixes[language].Stems(word))
                if (Find(stem.Text) is var id and >= 0 && IsOf(language, id))
                    known.Add((id, stem));
        return known;
    }

    /// <summary>Words of a language in another script that sound like a word of another language.</summary>
    public int[] Alike(int word, int language) => word >= WordCount || IsOf(language, word)
        ? []
        : _sounds[language].Nearest(_words[word]);

    /// <summary>The known words near a misspelled one, and how far away they are.</summary>
    public virtual List<(int Id, int Distance)> Near(string word) => _spelling.Near(word);

    /// <summary>Words of the language one edit away from a word of four letters or more, be it known or not.</summary>
    public IEnumerable<int> OneEdit(string word, int language) =>
        _spelling.OneEdit(word).Where(id => IsOf(language, id));

    /// <summary>Words of the language that are one slip away: so near, no run-together words are looked for.</summary>
    public int[] OneSlip(List<(int Id, int Distance)> near, int language) =>
        Nearest(near, language) is var (ids, distance) && distance <= Spelling.Farthest(edits: 1) ? ids : [];

    /// <summary>
    /// Words near a misspelled one: in the given language by letters, then by sound, else in the others. Where it has
    /// to be without its beginnings and endings, the endings are told.
    /// </summary>
    public (int[] Words, IReadOnlyList<string> Endings) Mend(
        string word, List<(int Id, int Distance)> near, int language)
    {
        var own = NearestStem(word, near, language);
        if (own.Words.Length > 0)
            return own;
        if (_sounds[language].Nearest(word) is { Length: > 0 } alike)
            return (alike, []);
        return (Nearest(near, null).Ids, []);
    }

    private (int[] Words, IReadOnlyList<string> Endings) NearestStem(
        string word, List<(int Id, int Distance)> near, int language)
    {
        var (best, endings) = (Nearest(near, language), (IReadOnlyList<string>)[]);
        foreach (var stem in _affixes[language].Stems(word))
        {
            var nearest = Nearest(Near(stem.Text), language);
            if (nearest.Distance < best.Distance)
                (best, endings) = (nearest, stem.Endings);
        }

        return (best.Ids, endings);
    }

    /// <summary>The nearest of them, those of one language only if it is given; none, and farthest, when there is
    /// none.</summary>
    private (int[] Ids, int Distance) Nearest(List<(int Id, int Distance)> near, int? language)
    {
        var best = int.MaxValue;
        List<int> ids = [];
        foreach (var (id, distance) in near)
        {
            if (distance > best || (language is { } only && !IsOf(only, id)))
                continue;
            if (distance < best)
                ids.Clear();
            best = distance;
            ids.Add(id);
        }

        return ([.. ids], best);
    }

    private bool IsOf(int language, int word) => (LanguagesOf(word) & 1UL << language) != 0;

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
        _ends[node] = [.. _ends[node], (language, phrase.Meaning)];
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
        phrases.Add(new GapPhrase([.. parts], parts.Sum(words => words.Length), language, meaning));
    }

    private int Child(int node, int word)
    {
        if (_next.TryGetValue(Step(node, word), out var child))
            return child;
        _ends.Add([]);
        return _next[Step(node, word)] = _ends.Count - 1;
    }

    private static long Step(int node, int word) => ((long)node << 32) | (uint)word;

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
