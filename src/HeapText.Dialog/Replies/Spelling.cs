namespace HeapText.Dialog.Replies;

/// <summary>Finds the known words that a misspelled one may stand for.</summary>
/// <remarks>
/// One edit (a letter more, less, other, or two swapped) in words of five letters and more, two from eight letters on;
/// a letter too many, as in a doubled one, is forgiven in a word of four as well.
/// Every known word is filed under each form that it leaves with letters struck out; two words within so many edits
/// share such a form, and the true distance is then measured.
/// </remarks>
internal sealed class Spelling
{
    private const int OneEditLength = 5;
    private const int TwoEditLength = 8;
    private const int LongestWord = 24;
    private readonly Dictionary<int, List<int>> _byForm = [];
    private readonly IReadOnlyList<string> _words;

    public Spelling(IReadOnlyList<string> words)
    {
        _words = words;
        for (var id = 0; id < words.Count; id++)
            foreach (var form in Forms(words[id]))
                File(form, id);
    }

    /// <summary>Ids of the nearest known words that may be used; empty when none is near enough.</summary>
    public int[] Nearest(string word, Func<int, bool> mayUse)
    {
        if (Edits(word.Length) == 0 || word.Length > LongestWord)
            return [];
        var best = Edits(word.Length) + 1;
        var found = new List<int>();
        foreach (var form in Forms(word))
        {
            foreach (var id in _byForm.GetValueOrDefault(form) ?? [])
            {
                var distance = mayUse(id) ? Distance(word, _words[id]) : int.MaxValue;
                if (distance > Math.Min(best, Edits(_words[id].Length + 1)) || found.Contains(id))
                    continue;
                if (distance < best)
                    found.Clear();
                best = distance;
                found.Add(id);
            }
        }

        return best <= Edits(word.Length) ? [.. found] : [];
    }

    private static int Edits(int length) => length < OneEditLength ? 0 : length < TwoEditLength ? 1 : 2;

    private void File(int form, int id)
    {
        if (!_byForm.TryGetValue(form, out var ids))
            _byForm[form] = ids = [];
        if (!ids.Contains(id))
            ids.Add(id);
    }

    /// <summary>Hashes of the word with up to as many letters struck out as edits are allowed.</summary>
    private static IEnumerable<int> Forms(string word)
    {
        if (word.Length < OneEditLength - 1 || word.Length > LongestWord)
            yield break;
        yield return Hash(word, -1, -1);
        for (var i = 0; i < word.Length; i++)
        {
            yield return Hash(word, i, -1);
            if (word.Length >= TwoEditLength - 1)
                for (var j = i + 1; j < word.Length; j++)
                    yield return Hash(word, i, j);
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
    public static int Distance(string a, string b)
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
