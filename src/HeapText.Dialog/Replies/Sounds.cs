using System.Text;

namespace HeapText.Dialog.Replies;

/// <summary>Finds words of the Ethiopic script by how they sound when typed on a phone that has Latin letters
/// only.</summary>
/// <remarks>
/// There is no one spelling, so consonants must agree, with those that Latin letters cannot tell apart as one, and the
/// vowels between them are compared: one written for another that it is often written for costs 1, any other 2. When no
/// word agrees, h, w and y count as vowels: they come and go.
/// </remarks>
internal sealed class Sounds
{
    private const int OuterVowel = 2;
    private const int FewestConsonants = 2;
    private const int ShortestWord = 3;
    private const int LongestWord = 24;

    /// <summary>Consonants and vowels as <see cref="Ethiopic"/> takes them apart, over how they sound.</summary>
    private const string Apart = "ህልምርስሽቅብቭትችንኝክውዝዥይድጅግጥጭጵጽፍፕኧኡኢኣኤኦእ";
    private const string InLatin = "hlmrsSkbvtCnnkwzjydjgtCpsfpeuiaeoi";

    /// <summary>Pairs of letters for one sound, and letters that stand for the same one.</summary>
    private static readonly (string Written, string Sound)[] Folds =
    [
        ("sh", "S"), ("ch", "C"), ("gn", "n"), ("ny", "n"), ("ts", "s"), ("tz", "s"), ("zh", "j"), ("ph", "p"),
        ("kh", "h"), ("th", "t"), ("q", "k"), ("x", "s"), ("c", "k"), ("ee", "i"), ("oo", "u"), ("ie", "e"),
        ("ye", "e"),
    ];

    private static readonly (string Written, string Sound)[] KnownFolds = [("ny", "n"), ("ye", "e")];

    private const string Vowels = "aeiou";
    private const string VowelsAndWeak = "aeiouhwy";

    private readonly Dictionary<(string Vowels, string Consonants), List<(int Id, string[] Between)>> _known = [];
    private readonly Affixes _affixes;

    /// <param name="words">Words by their ids; those not in the Ethiopic script are passed over.</param>
    /// <param name="affixes">What hangs on them.</param>
    public Sounds(IEnumerable<(string Word, int Id)> words, Affixes affixes)
    {
        foreach (var (word, id) in words.Where(w => Ethiopic.IsWord(w.Word)))
        {
            foreach (var vowels in (string[])[Vowels, VowelsAndWeak])
            {
                var (consonants, between) = Parted(Fold(Written(word), KnownFolds), vowels);
                if (!_known.TryGetValue((vowels, consonants), out var same))
                    _known[(vowels, consonants)] = same = [];
                same.Add((id, between));
            }
        }

        _affixes = new Affixes([.. affixes.Before.Select(Written)], [.. affixes.After.Select(Written)]);
    }

    /// <summary>Ids of the words that sound most like a Latin one; empty when none is near enough.</summary>
    public int[] Nearest(string word)
    {
        if (_known.Count == 0 || word.Length is < ShortestWord or > LongestWord || !word.All(char.IsAsciiLetter))
            return [];
        var forms = _affixes.Stems(word).Select(stem => stem.Text).Prepend(word).ToList();
        return Nearest(forms, Vowels) is { Length: > 0 } strict ? strict : Nearest(forms, VowelsAndWeak);
    }

    private int[] Nearest(List<string> forms, string vowels)
    {
        var costs = forms.SelectMany(form => CostsOf(form, vowels)).ToList();
        var least = costs.Count == 0 ? 0 : costs.Min(known => known.Cost);
        return [.. costs.Where(known => known.Cost == least).Select(known => known.Id).Distinct()];
    }

    private IEnumerable<(int Id, int Cost)> CostsOf(string word, string vowels)
    {
        var (consonants, between) = Parted(Fold(word, Folds), vowels);
        if (consonants.Length < FewestConsonants || !_known.TryGetValue((vowels, consonants), out var same))
            return [];
        return same.Select(known => (known.Id, Cost: CostOf(known.Between, between)))
            .Where(known => known.Cost <= consonants.Length);
    }

    private static string Written(string word) =>
        string.Concat(word.Select(c => Apart.IndexOf(c)).Where(at => at >= 0).Select(at => InLatin[at]));

    private static string Fold(string word, (string Written, string Sound)[] folds)
    {
        var folded = new StringBuilder();
        for (var i = 0; i < word.Length;)
        {
            var fold = Array.FindIndex(folds, f => word.AsSpan(i).StartsWith(f.Written, StringComparison.Ordinal));
            var (written, sound) = fold >= 0 ? folds[fold] : (word[i..(i + 1)], word[i..(i + 1)]);
            if (folded.Length == 0 || folded[^1] != sound[0])
                folded.Append(sound);
            i += written.Length;
        }

        return folded.ToString();
    }

    /// <summary>Consonants, and the vowels before, between and after them.</summary>
    private static (string Consonants, string[] Between) Parted(string folded, string vowels)
    {
        var consonants = new StringBuilder();
        var between = new List<string> { "" };
        foreach (var c in folded)
        {
            if (vowels.Contains(c))
            {
                between[^1] += c;
                continue;
            }

            consonants.Append(c);
            between.Add("");
        }

        return (consonants.ToString(), [.. between]);
    }

    /// <summary>Nobody leaves out a vowel before the first consonant or after the last, nor adds one, so that costs
    /// more.</summary>
    private static int CostOf(string[] known, string[] written) => known.Zip(written, Cost).Sum()
        + (IsOneSilent(known[0], written[0]) ? OuterVowel : 0) + (IsOneSilent(known[^1], written[^1]) ? OuterVowel : 0);

    private static bool IsOneSilent(string known, string written) => (known.Length == 0) != (written.Length == 0);

    private static int Cost(string known, string written)
    {
        if (known == written)
            return 0;
        return (known, written) is ("", "i" or "e" or "u") or ("i", "" or "e") or ("e", "" or "a" or "i") or ("a", "e")
            ? 1 : 2;
    }
}
