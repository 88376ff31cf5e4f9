namespace HeapText.Dialog.Replies;

/// <summary>The phrases of all languages in one tree of words.</summary>
internal class PhraseIndex
{
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly List<string> _words = [];
    private readonly Dictionary<(int Node, int Word), int> _next = [];
    private readonly List<List<(int Language, Meaning Meaning)>> _ends = [[]];
    private readonly Dictionary<int, List<GapPhrase>> _gapPhrases = [];
    private readonly List<ulong> _languagesOfWord = [];
    private readonly HashSet<int> _links = [];
    private readonly Spelling _spelling;

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
    }

    /// <summary>How many known words there are: their ids are those below.</summary>
    public int WordCount => _words.Count;

    /// <summary>How many places in the tree there are: their numbers are those below.</summary>
    public int NodeCount => _ends.Count;

    public string WordOf(int id) => _words[id];

    /// <summary>A phrase whose parts may stand up to three words apart.</summary>
    public sealed record GapPhrase(int[][] Parts, int Language, Meaning Meaning);

    public const int Root = 0;

    public virtual bool IsKnown(string word) => _ids.ContainsKey(word);

    public virtual int Find(ReadOnlySpan<char> word) =>
        _ids.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var id) ? id : -1;

    public virtual bool IsLink(int word) => _links.Contains(word);

    public virtual int Next(int node, int word) => _next.GetValueOrDefault((node, word), -1);

    public virtual IReadOnlyList<(int Language, Meaning Meaning)> Ends(int node) => _ends[node];

    public virtual IReadOnlyList<GapPhrase> GapPhrases(int word) => _gapPhrases.GetValueOrDefault(word) ?? [];

    /// <summary>Words near a misspelled one, in the given language if it has any, else in the others.</summary>
    public virtual int[] Mend(string word, int language)
    {
        var own = _spelling.Nearest(word, id => (_languagesOfWord[id] & 1UL << language) != 0);
        return own.Length > 0 ? own : _spelling.Nearest(word, _ => true);
    }

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
