namespace HeapText.Dialog.Replies;

/// <summary>What a whole text means as the answer to one question, by the section <c>answers</c> of
/// words.yml.</summary>
public sealed class AnswerReader
{
    /// <summary>The questions and their answers; answers that are offered by number stand in that order.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Known { get; } =
        new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal)
        {
            ["heat"] = ["hot", "warm", "cool", "cold"],
            ["smell"] = ["earthy", "ammonia", "rotten", "sour", "none"],
            ["moisture"] = ["dripping", "wet", "good", "dry", "cannot"],
            ["rod"] = ["wood", "metal"],
            ["hour"] = ["6", "7", "8", "12", "16"],
            ["built"] = ["yes", "no"],
            ["turned"] = ["yes", "no"],
            ["have"] = ["none"],
            ["crop"] =
            [
                "vegetables", "salad", "maize", "beans", "banana", "coffee", "coffee-tree", "fruit-tree", "nursery",
            ],
            ["sprouts"] = ["none", "all", "not-tried"],
            ["rain"] = ["dry", "some", "heavy"],
            ["labour"] = ["often", "sometimes", "little"],
            ["screen"] = ["more", "back", "menu"],
            ["talk"] = ["thanks", "hello", "hour", "rod", "crop", "method"],
        };

    private const int Longest = 80;

    private readonly List<(string Language, IReadOnlyDictionary<(string Question, string Phrase), string> Answers)>
        _answers;

    /// <summary>Makes a reader of all the languages together.</summary>
    public AnswerReader(IReadOnlyList<Lexicon> lexicons) =>
        _answers = [.. lexicons.Select(lexicon => (lexicon.Language, lexicon.Answers))];

    /// <summary>The answer; null when the text as a whole is none of its words.</summary>
    /// <param name="question">One of <see cref="Known"/>.</param>
    /// <param name="text">As it came in.</param>
    /// <param name="language">The farmer's language, whose words go first.</param>
    public string? Read(string question, string text, string language)
    {
        if (text.Length > Longest) return null;
        var phrase = string.Join(' ', Letters.Words(text));
        // A bare figure is read as the farmer's own language counts hours, not as another does.
        var isFigure = phrase.All(char.IsAsciiDigit);
        return _answers.Where(words => !isFigure || words.Language == language)
            .OrderBy(words => words.Language != language)
            .Select(words => words.Answers.GetValueOrDefault((question, phrase)))
            .FirstOrDefault(answer => answer is not null);
    }

    /// <summary>The answer whose words stand somewhere in a text, the longest first; null when there is
    /// none.</summary>
    /// <param name="question">One of <see cref="Known"/>.</param>
    /// <param name="text">As it came in.</param>
    /// <param name="language">The farmer's language, whose words go first.</param>
    public string? FindIn(string question, string text, string language)
    {
        if (text.Length > Longest) return null;
        var words = Letters.Words(text).ToList();
        for (var length = words.Count; length > 0; length--)
            for (var at = 0; at + length <= words.Count; at++)
                if (Read(question, string.Join(' ', words.Skip(at).Take(length)), language) is { } answer)
                    return answer;
        return null;
    }
}
