namespace HeapText.Dialog.Replies;

/// <summary>Finds the known words that a misspelled one may stand for.</summary>
/// <remarks>
/// One edit (a letter more, less, other, or two swapped) in words of five letters and more, two from eight letters on;
/// a letter too many, as in a doubled one, is forgiven in a word of four as well. Ethiopic letters are taken apart,
/// which makes longer words: two edits from ten parts on, a whole letter more or less in words of four, and a wrong
/// vowel in any word of three letters.
/// Every known word is filed under each form that it leaves with letters struck out; two words within so many edits
/// share such a form, and the true distance is then measured.
/// </remarks>
internal sealed class Spelling
{
    private const int OneEditLength = 5;
    private const int TwoEditLength = 8;
    private const int OneEditLetters = 3;
    private const int TwoEditLengthApart = 10;
    private const int LongestWord = 24;
    private const int MostBucketBits = 16;
    private readonly int[] _forms, _ids, _buckets;
    private readonly int _bucketBits;
    private readonly IReadOnlyList<string> _words;

    public Spelling(IReadOnlyList<string> words)
    {
        _words = words;
        List<int> forms = [], ids = [], own = [];
        for (var id = 0; id < words.Count; id++)
        {
            own.Clear();
            AddForms(words[id], own);
            forms.AddRange(own);
            ids.AddRange(Enumerable.Repeat(id, own.Count));
        }

        (_forms, _ids) = ([.. forms], [.. ids]);
        Array.Sort(_forms, _ids);
        _bucketBits = Math.Clamp(int.Log2(_forms.Length + 1), 1, MostBucketBits);
        _buckets = new int[(1 << _bucketBits) + 1];
        for (int bucket = 0, at = 0; bucket < _buckets.Length; bucket++)
        {
            while (at < _forms.Length && BucketOf(_forms[at]) < bucket) at++;
            _buckets[bucket] = at;
        }
    }

    /// <summary>The known words that are near enough, and how far away they are. Of words as many edits away, those
    /// that differ in vowels only are nearer.</summary>
    public List<(int Id, int Distance)> Near(string word)
    {
        List<(int Id, int Distance)> near = [];
        if (Edits(word) == 0 || word.Length > LongestWord)
            return near;
        List<int> forms = [];
        AddForms(word, forms);
        foreach (var form in forms)
        {
            var end = _buckets[BucketOf(form) + 1];
            for (var at = _buckets[BucketOf(form)]; at < end; at++)
                if (_forms[at] == form)
                    Add(near, word, _ids[at]);
        }

        return near;
    }

    /// <summary>The known words one edit away from a word, also from one of four letters, which alone is too short to
    /// be mended.</summary>
    public IEnumerable<int> OneEdit(string word)
    {
        if (word.Length is < OneEditLength - 1 or > LongestWord || Ethiopic.IsWord(word))
            return [];
        List<int> forms = [], near = [];
        AddForms(word, forms);
        foreach (var form in forms)
        {
            var end = _buckets[BucketOf(form) + 1];
            for (var at = _buckets[BucketOf(form)]; at < end; at++)
                if (_forms[at] == form && Distance(word, _words[_ids[at]]) == 1)
                    near.Add(_ids[at]);
        }

        return near.Distinct();
    }

    private void Add(List<(int Id, int Distance)> near, string word, int id)
    {
        foreach (var known in near)
            if (known.Id == id)
                return;
        if (DistanceTo(word, _words[id]) is { } distance)
            near.Add((id, distance));
    }

    /// <summary>How far words are that are so many edits away, at most.</summary>
    public static int Farthest(int edits) => (2 * edits) + 1;

    private int BucketOf(int form) => (form >> (32 - _bucketBits)) + (1 << (_bucketBits - 1));

    /// <summary>How far a known word is; null when too far.</summary>
    private static int? DistanceTo(string word, string known)
    {
        var edits = Ethiopic.IsOneLetterApart(word, known) ? 1 : Distance(word, known);
        var isOtherConsonant = !Ethiopic.AgreeInConsonants(word, known);
        return edits > Math.Min(Edits(word), Edits(known, 1))
            || (isOtherConsonant && Math.Min(word.Length, known.Length) < OneEditLength)
            ? null
            : 2 * edits + (isOtherConsonant ? 1 : 0);
    }

    private static int Edits(string word, int more = 0)
    {
        var isApart = Ethiopic.IsWord(word);
        if (word.Length + more >= (isApart ? TwoEditLengthApart : TwoEditLength))
            return 2;
        return word.Length + more >= OneEditLength || (isApart && Ethiopic.Letters(word) >= OneEditLetters) ? 1 : 0;
    }

    /// <summary>Hashes of the word with up to as many letters struck out as edits are allowed.</summary>
    private static void AddForms(string word, List<int> forms)
    {
        if (word.Length < (Ethiopic.IsWord(word) ? OneEditLetters - 1 : OneEditLength - 1) || word.Length > LongestWord)
            return;
        forms.Add(Hash(word, -1, -1));
        var areTwo = Edits(word, 1) > 1;
        for (var i = 0; i < word.Length; i++)
        {
            forms.Add(Hash(word, i, -1));
            if (Ethiopic.IsWholeLetterAt(word, i))
                forms.Add(Hash(word, i, i + 1));
            for (var j = i + 1; areTwo && j < word.Length; j++)
                forms.Add(Hash(word, i, j));
        }
    }

    private static int Hash(string word, int firstOut, int secondOut)
    {
        unchecked
        {
            var hash = (int)2166136261; // FNV-1a
            for (var i = 0; i < word.Length; i++)
                if (i != firstOut && i != secondOut)
                    hash = (hash ^ word[i]) * 16777619;
            return hash;
        }
    }

    /// <summary>Optimal string alignment distance.</summary>
    private static int Distance(string a, string b)
    {
        Span<int> beforeLast = stackalloc int[b.Length + 1];
        Span<int> last = stackalloc int[b.Length + 1];
        Span<int> current = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                current[j] = Math.Min(Math.Min(last[j] + 1, current[j - 1] + 1), last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    current[j] = Math.Min(current[j], beforeLast[j - 2] + 1);
            }

            var spare = beforeLast;
            beforeLast = last;
            last = current;
            current = spare;
        }

        return last[b.Length];
    }
}
