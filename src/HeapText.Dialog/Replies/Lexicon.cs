using YamlDotNet.Core;

namespace HeapText.Dialog.Replies;

/// <summary>The words of one language that a farmer may use, as written in its words.yml.</summary>
public sealed class Lexicon
{
    internal Lexicon(
        string language, IReadOnlyList<Phrase> phrases,
        IReadOnlyDictionary<(string Question, string Phrase), string> answers, Affixes affixes)
    {
        Language = language;
        Phrases = phrases;
        Answers = answers;
        Affixes = affixes;
    }

    /// <summary>Two-letter code of the language, the name of its folder.</summary>
    public string Language { get; }

    internal IReadOnlyList<Phrase> Phrases { get; }

    /// <summary>What a whole text answers to a question.</summary>
    internal IReadOnlyDictionary<(string Question, string Phrase), string> Answers { get; }

    /// <summary>What hangs on words in this language.</summary>
    internal Affixes Affixes { get; }

    /// <summary>Loads <c>DIR/LANGUAGE/words.yml</c> of every language, and all faults in them at once.</summary>
    /// <param name="directory">The dialogs folder. A language without a words.yml is passed over.</param>
    /// <param name="materialKeys">Keys of the material table, which the files may not leave; null not to check.</param>
    public static LexiconLoad Load(string directory, IReadOnlySet<string>? materialKeys = null)
    {
        var faults = new List<DialogFault>();
        if (!Directory.Exists(directory))
            return new LexiconLoad([], [new DialogFault(directory, 1, 1, "There is no such folder.")]);
        var files = Directory.EnumerateDirectories(directory).Order(StringComparer.Ordinal)
            .Select(folder => Path.Combine(folder, "words.yml")).Where(File.Exists);
        var loads = files.AsParallel().AsOrdered().Select(file => LoadFile(file, materialKeys)).ToList();
        var lexicons = loads.Select(load => load.Lexicon).ToList();
        faults.AddRange(loads.SelectMany(load => load.Faults));
        if (lexicons.Count == 0)
            faults.Add(new DialogFault(directory, 1, 1, "No language has a words.yml here."));
        return new LexiconLoad(lexicons, faults);
    }

    private static (Lexicon Lexicon, IEnumerable<DialogFault> Faults) LoadFile(
        string file, IReadOnlySet<string>? materialKeys)
    {
        var language = Path.GetFileName(Path.GetDirectoryName(file))!;
        var sections = new LexiconSections(file, language, materialKeys);
        try
        {
            using var reader = File.OpenText(file);
            sections.Read(MarkedYaml.Read(reader));
        }
        catch (YamlException fault)
        {
            sections.Fault((int)fault.Start.Line, (int)fault.Start.Column, fault.Message);
        }
        catch (IOException fault)
        {
            sections.Fault(1, 1, fault.Message);
        }

        return (new Lexicon(language, sections.Phrases, sections.Answers, sections.Affixes),
            sections.Faults.OrderBy(fault => fault.Line).ThenBy(fault => fault.Column));
    }
}

/// <summary>All lexicons and all their faults.</summary>
/// <param name="Lexicons">One for each language.</param>
/// <param name="Faults">Empty when all is well.</param>
public sealed record LexiconLoad(IReadOnlyList<Lexicon> Lexicons, IReadOnlyList<DialogFault> Faults);

/// <summary>A phrase and what it stands for.</summary>
/// <param name="Words">Normalised words; <see cref="Gap"/> stands for up to three words that do not matter.</param>
/// <param name="Meaning">What it stands for.</param>
internal sealed record Phrase(IReadOnlyList<string> Words, Meaning Meaning)
{
    public const string Gap = "..";

    /// <summary>Line and column in its file, from 1.</summary>
    public (int Line, int Column) Place { get; init; }

    public bool HasGap => Words.Contains(Gap);
}
