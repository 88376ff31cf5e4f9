using System.Globalization;
using HeapText.Agronomy.Heap;

namespace HeapText.Dialog.Replies;

/// <summary>Reads the sections of one words.yml into phrases, collecting every fault on the way.</summary>
internal sealed class LexiconSections(string file, string language, IReadOnlySet<string>? materialKeys)
{
    /// <summary>What is counted in kilograms, though farmers say it.</summary>
    private const string Gram = "gram";

    private readonly Dictionary<(string Group, string Phrase), (string Key, int Line)> _taken = [];

    /// <summary>Plain words of what stands between blanks: patterns spell the same ones out again and
    /// again.</summary>
    private readonly Dictionary<string, string[]> _plain = new(StringComparer.Ordinal);

    private readonly List<(MarkedYaml.Text Text, string Question, string Phrase)> _answerPlaces = [];

    private static readonly string[] Required =
    [
        "language", "provenance", "reviewed", "materials", "refused", "measures", "numbers", "checks", "intents",
        "particles", "answers",
    ];

    public List<Phrase> Phrases { get; } = [];

    public Dictionary<(string Question, string Phrase), string> Answers { get; } = [];

    public Affixes Affixes { get; private set; } = Affixes.None;

    public List<DialogFault> Faults { get; } = [];

    public void Fault(int line, int column, string message) => Faults.Add(new(file, line, column, message));

    public void Read(MarkedYaml root)
    {
        if (root is not MarkedYaml.Map map)
        {
            Fault(root, "The file must be a map of sections.");
            return;
        }

        foreach (var (key, value) in Distinct(map))
            ReadSection(key, value);
        FaultMisplacedNumbers();
        foreach (var missing in Required)
            if (!map.Entries.Any(entry => entry.Key.Value == missing))
                Fault(root, $"Section '{missing}' is missing.");
    }

    private void ReadSection(MarkedYaml.Text key, MarkedYaml value)
    {
        switch (key.Value)
        {
            case "language": ReadLanguage(value); break;
            case "provenance" or "reviewed": break;
            case "materials": ReadKeys(value, "material", name => Material(name, MeaningKind.Material)); break;
            case "refused": ReadKeys(value, "material", name => Material(name, MeaningKind.Refused)); break;
            case "ambiguous": ReadAmbiguous(value); break;
            case "measures": ReadKeys(value, "measure", Measure); break;
            case "numbers": ReadKeys(value, "number", name => Number(name, MeaningKind.Number)); break;
            case "fractions": ReadKeys(value, "number", name => Number(name, MeaningKind.Fraction)); break;
            case "checks": ReadChecks(value); break;
            case "intents": ReadKeys(value, "intent", name => Keyed<Intent>(name, MeaningKind.Intent)); break;
            case "affixes": ReadAffixes(value); break;
            case "answers": ReadAnswers(value); break;
            case "languages": ReadKeys(value, "language", name => new Meaning(MeaningKind.Language, name)); break;
            case "daysAgo": ReadKeys(value, "days", name => Number(name, MeaningKind.DaysAgo)); break;
            case "urgent": ReadPhrases(value, "urgent", new Meaning(MeaningKind.Urgent, "urgent")); break;
            case "particles": ReadKeys(value, "particle", name => Keyed<Particle>(name, MeaningKind.Particle)); break;
            case "plain": ReadPhrases(value, "plain", new Meaning(MeaningKind.Plain, "plain")); break;
            default: Fault(key, $"Unknown section '{key.Value}'."); break;
        }
    }

    private void ReadLanguage(MarkedYaml value)
    {
        if (value is not MarkedYaml.Text text || text.Value != language)
            Fault(value, $"The language must be '{language}', the name of the folder.");
    }

    private void ReadChecks(MarkedYaml section)
    {
        if (section is not MarkedYaml.Map map)
        {
            Fault(section, "Checks must be a map of heat, smell, moisture and pests.");
            return;
        }

        foreach (var (key, value) in Distinct(map))
        {
            switch (key.Value)
            {
                case "heat": ReadKeys(value, "heat", n => Keyed<Heat>(n, MeaningKind.Heat)); break;
                case "smell": ReadKeys(value, "smell", n => Keyed<Smell>(n, MeaningKind.Smell)); break;
                case "moisture": ReadKeys(value, "moisture", n => Keyed<Moisture>(n, MeaningKind.Moisture)); break;
                case "pests": ReadKeys(value, "pests", n => Keyed<Pests>(n, MeaningKind.Pests)); break;
                default: Fault(key, $"Unknown check '{key.Value}': use heat, smell, moisture or pests."); break;
            }
        }
    }

    private void ReadAnswers(MarkedYaml section)
    {
        if (section is not MarkedYaml.Map questions)
        {
            Fault(section, "Answers must be a map of questions, each a map of answers.");
            return;
        }

        foreach (var (question, answers) in Distinct(questions))
        {
            if (!AnswerReader.Known.TryGetValue(question.Value, out var known))
                Fault(question, $"Unknown question '{question.Value}'.");
            else if (answers is not MarkedYaml.Map map)
                Fault(answers, $"'{question.Value}' must be a map of answers.");
            else
                foreach (var (answer, words) in Distinct(map)) ReadAnswer(question.Value, known, answer, words);
        }
    }

    private void ReadAnswer(
        string question, IReadOnlyList<string> known, MarkedYaml.Text answer, MarkedYaml words)
    {
        if (!known.Contains(answer.Value))
            Fault(answer, $"Unknown answer '{answer.Value}': use {string.Join(", ", known)}.");
        else if (words is not MarkedYaml.List { Items.Count: > 0 } list)
            Fault(words, $"'{answer.Value}' needs a list with at least one word.");
        else
            foreach (var text in list.Items.OfType<MarkedYaml.Text>())
                foreach (var phrase in Braces.Expand(text.Value).Select(s => string.Join(' ', WordsOf(s))).Distinct())
                    if (Answers.TryAdd((question, phrase), answer.Value))
                        _answerPlaces.Add((text, question, phrase));
                    else
                        Fault(text, $"'{phrase}' stands twice under '{question}'.");
    }

    /// <summary>A choice is answered by its number, so that number cannot stand for another choice.</summary>
    private void FaultMisplacedNumbers()
    {
        var numbers = Phrases.Where(phrase => phrase.Meaning.Kind == MeaningKind.Number)
            .ToLookup(phrase => string.Join(' ', phrase.Words), phrase => phrase.Meaning.Value);
        foreach (var (text, question, phrase) in _answerPlaces)
        {
            var place = AnswerReader.Known[question].ToList().IndexOf(Answers[(question, phrase)]) + 1;
            var number = int.TryParse(phrase, NumberStyles.None, CultureInfo.InvariantCulture, out var figure)
                ? figure
                : numbers[phrase].FirstOrDefault();
            if (number >= 1 && number <= AnswerReader.Known[question].Count && number != place)
                Fault(text, $"'{phrase}' is the number of another answer to '{question}' than its own, {place}.");
        }
    }

    private void ReadAffixes(MarkedYaml section)
    {
        if (section is not MarkedYaml.Map map)
        {
            Fault(section, "Affixes must be a map of before and after.");
            return;
        }

        foreach (var (key, value) in Distinct(map))
        {
            List<string> found = value is MarkedYaml.List list
                ? [.. list.Items.OfType<MarkedYaml.Text>().SelectMany(text => WordsOf(text.Value))]
                : [];
            if (found.Count == 0)
                Fault(value, $"'{key.Value}' needs a list with at least one word.");
            else if (key.Value == "before")
                Affixes = Affixes with { Before = found };
            else if (key.Value == "after")
                Affixes = Affixes with { After = found };
            else
                Fault(key, $"Unknown affix '{key.Value}': use before or after.");
        }
    }

    private void ReadKeys(MarkedYaml section, string group, Func<string, Meaning?> meaningOf)
    {
        if (section is not MarkedYaml.Map map)
        {
            Fault(section, "This section must be a map of keys, each with a list of words.");
            return;
        }

        foreach (var (key, value) in Distinct(map))
        {
            if (meaningOf(key.Value) is { } meaning)
                ReadPhrases(value, group, meaning);
            else
                Fault(key, $"Unknown {group} '{key.Value}'.");
        }
    }

    private void ReadAmbiguous(MarkedYaml section)
    {
        if (section is not MarkedYaml.Map map)
        {
            Fault(section, "Ambiguous words must be a map of words, each with a list of materials.");
            return;
        }

        foreach (var (word, value) in Distinct(map))
        {
            List<MarkedYaml.Text> keys = value is MarkedYaml.List list ? [.. list.Items.OfType<MarkedYaml.Text>()] : [];
            if (keys.Count is < 2 or > Reading.MostChoices)
                Fault(value, $"'{word.Value}' needs a list of 2 to {Reading.MostChoices} materials.");
            foreach (var key in keys.Where(key => Material(key.Value, MeaningKind.Material) is null))
                Fault(key, $"Unknown material '{key.Value}'.");
            IReadOnlyList<string> choices = [.. keys.Select(key => key.Value)];
            ReadPhrase(word, "ambiguous", new Meaning(MeaningKind.Ambiguous, word.Value, Choices: choices));
        }
    }

    private void ReadPhrases(MarkedYaml value, string group, Meaning meaning)
    {
        if (value is not MarkedYaml.List { Items.Count: > 0 } list)
        {
            Fault(value, $"'{meaning.Key}' needs a list with at least one word.");
            return;
        }

        foreach (var item in list.Items)
        {
            if (item is MarkedYaml.Text text)
                ReadPhrase(text, group, meaning);
            else
                Fault(item, "A word or phrase is expected here.");
        }
    }

    private void ReadPhrase(MarkedYaml.Text text, string group, Meaning meaning)
    {
        // A little word may do several things: in Portuguese "a" is a link and the "to" between two numbers.
        var scope = meaning.Kind == MeaningKind.Particle ? meaning.Key : group;
        foreach (var spelling in Braces.Expand(text.Value))
        {
            var words = WordsOf(spelling);
            var phrase = string.Join(' ', words);
            if (words.Count == 0 || words[0] == Phrase.Gap || words[^1] == Phrase.Gap)
                Fault(text, $"'{spelling}' must begin and end with a word.");
            else if (_taken.TryAdd((scope, phrase), (meaning.Key, text.Line)))
                Phrases.Add(new Phrase(words, meaning) { Place = (text.Line, text.Column) });
            else
                FaultTaken(text, spelling, meaning.Key, _taken[(scope, phrase)]);
        }
    }

    private void FaultTaken(MarkedYaml.Text text, string spelling, string key, (string Key, int Line) first) =>
        Fault(text, first.Key == key
            ? $"'{spelling}' stands twice under '{key}', first on line {first.Line}."
            : $"'{spelling}' stands for both '{first.Key}' (line {first.Line}) and '{key}'.");

    private List<string> WordsOf(string spelling)
    {
        List<string> words = [];
        var known = _plain.GetAlternateLookup<ReadOnlySpan<char>>();
        foreach (var range in spelling.AsSpan().Split(' '))
        {
            var written = spelling.AsSpan(range);
            if (!known.TryGetValue(written, out var plain))
                _plain[written.ToString()] = plain = written is Phrase.Gap
                    ? [Phrase.Gap]
                    : [.. Letters.Words(written.ToString())];
            words.AddRange(plain);
        }

        return words;
    }

    private IEnumerable<(MarkedYaml.Text Key, MarkedYaml Value)> Distinct(MarkedYaml.Map map)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in map.Entries)
        {
            if (seen.Add(entry.Key.Value))
                yield return entry;
            else
                Fault(entry.Key, $"Key '{entry.Key.Value}' stands twice.");
        }
    }

    private Meaning? Material(string key, MeaningKind kind) =>
        materialKeys is null || materialKeys.Contains(key) ? new Meaning(kind, key) : null;

    private static Meaning? Measure(string key) =>
        Canonical.Measures.Contains(key) ? new Meaning(MeaningKind.Measure, key)
        : key == Gram ? new Meaning(MeaningKind.Measure, "kg", 0.001m)
        : null;

    private static Meaning? Number(string key, MeaningKind kind) =>
        decimal.TryParse(key, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? new Meaning(kind, key, value)
            : null;

    private static Meaning? Keyed<T>(string key, MeaningKind kind) where T : struct, Enum =>
        Canonical.TryValue<T>(key, out var value)
            ? new Meaning(kind, key) { Place = Convert.ToInt32(value, CultureInfo.InvariantCulture) }
            : null;

    private void Fault(MarkedYaml at, string message) => Fault(at.Line, at.Column, message);
}
