using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Lint;

/// <summary>Phrases of words.yml that stand for two things.</summary>
/// <remarks>
/// In one language that is a fault where the reader would have to guess: two materials, measures or numbers, or one and
/// another; or two answers to one check. Other kinds may share a phrase, for the reader tells them apart by what stands
/// around them: "urine" is a material, and what a heap may smell of. Between two languages it is a warning: a farmer's
/// own language goes first, so the other meaning is only lost on who mixes the two.
/// </remarks>
internal static class WordClashes
{
    /// <summary>Kinds of which a phrase can be only one, in groups.</summary>
    private static readonly MeaningKind[][] Groups =
    [
        [MeaningKind.Material, MeaningKind.Refused, MeaningKind.Measure, MeaningKind.Number, MeaningKind.Fraction],
        [MeaningKind.Heat], [MeaningKind.Smell], [MeaningKind.Moisture], [MeaningKind.Pests],
    ];

    public static IEnumerable<DialogFault> Within(Lexicon lexicon, string path) =>
        Groups.SelectMany(group => Within(lexicon, path, group));

    public static IEnumerable<DialogFault> Between(
        IReadOnlyList<Lexicon> lexicons, Func<Lexicon, string> pathOf) =>
        Groups.SelectMany(group => Between(lexicons, pathOf, group));

    private static IEnumerable<DialogFault> Within(Lexicon lexicon, string path, MeaningKind[] group)
    {
        Dictionary<string, Phrase> taken = [];
        foreach (var (words, phrase) in PhrasesOf(lexicon, group))
        {
            if (taken.TryAdd(words, phrase)) continue;
            var first = taken[words];
            if (first.Meaning.Key == phrase.Meaning.Key && first.Meaning.Kind == phrase.Meaning.Kind) continue;
            yield return new DialogFault(path, phrase.Place.Line, phrase.Place.Column,
                $"'{words}' stands for both {Named(first)} (line {first.Place.Line}) and {Named(phrase)}");
        }
    }

    private static IEnumerable<DialogFault> Between(
        IReadOnlyList<Lexicon> lexicons, Func<Lexicon, string> pathOf, MeaningKind[] group)
    {
        Dictionary<string, (Lexicon Lexicon, Phrase Phrase)> taken = [];
        foreach (var lexicon in lexicons)
        {
            foreach (var (words, phrase) in PhrasesOf(lexicon, group))
            {
                if (taken.TryAdd(words, (lexicon, phrase))) continue;
                var (other, first) = taken[words];
                if (other == lexicon || first.Meaning.Key == phrase.Meaning.Key) continue;
                yield return new DialogFault(pathOf(lexicon), phrase.Place.Line, phrase.Place.Column,
                    $"'{words}' is {Named(phrase)} here and {Named(first)} in {other.Language}");
            }
        }
    }

    /// <summary>How many phrases a language has of each kind.</summary>
    public static Dictionary<string, int> PhrasesBySection(Lexicon lexicon) => lexicon.Phrases
        .GroupBy(phrase => phrase.Meaning.Kind).OrderBy(same => same.Key)
        .ToDictionary(same => $"{same.Key}".ToLowerInvariant(), same => same.Count());

    /// <summary>The phrases of some kinds, as they are matched: without the links inside them.</summary>
    private static IEnumerable<(string Words, Phrase Phrase)> PhrasesOf(Lexicon lexicon, MeaningKind[] group)
    {
        var links = lexicon.Phrases.Where(phrase => phrase.Meaning.Is(Particle.Link) && phrase.Words.Count == 1)
            .Select(phrase => phrase.Words[0]).ToHashSet(StringComparer.Ordinal);
        return lexicon.Phrases.Where(phrase => group.Contains(phrase.Meaning.Kind)).Select(phrase =>
            (string.Join(' ', phrase.Words.Where((word, i) =>
                i == 0 || i == phrase.Words.Count - 1 || !links.Contains(word))), phrase));
    }

    private static string Named(Phrase phrase) =>
        $"{$"{phrase.Meaning.Kind}".ToLowerInvariant()} '{phrase.Meaning.Key}'";
}
