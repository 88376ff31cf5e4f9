using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Lint;

/// <summary>Everything that can be said of a dialogs folder: what is wrong, what is close to it, and how far each
/// language is.</summary>
/// <param name="Faults">What is wrong, by file, line and column.</param>
/// <param name="Languages">Where each language stands; empty where a fault keeps the texts from being used.</param>
/// <param name="Warnings">What is not wrong, but may be.</param>
public sealed record DialogLint(
    IReadOnlyList<DialogFault> Faults, IReadOnlyList<LanguageStatus> Languages, IReadOnlyList<DialogFault> Warnings)
{
    /// <summary>Reads and checks a folder.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static DialogLint Check(string folder)
    {
        var (texts, words) = DialogSet.Read(folder);
        string PathOf(Lexicon lexicon) => Path.Combine(folder, lexicon.Language, "words.yml");
        IEnumerable<DialogFault> faults =
        [
            .. texts.Faults, .. words.Faults, .. texts.Files.SelectMany(file => new StyleCheck(file).Faults()),
            .. words.Lexicons.SelectMany(lexicon => WordClashes.Within(lexicon, PathOf(lexicon))),
        ];
        IEnumerable<DialogFault> warnings =
        [
            .. texts.Book is null ? [] : InPseudoLanguage(texts.Files),
            .. WordClashes.Between(words.Lexicons, PathOf),
        ];
        return new DialogLint([.. Sorted(faults)],
            texts.Book is { } book ? [.. texts.Files.Select(file => StatusOf(book, file, words))] : [],
            [.. Sorted(warnings)]);
    }

    private static IOrderedEnumerable<DialogFault> Sorted(IEnumerable<DialogFault> faults) => faults
        .OrderBy(fault => fault.File, StringComparer.Ordinal).ThenBy(fault => fault.Line).ThenBy(fault => fault.Column);

    /// <summary>Messages that would be too long in a language whose words are a third longer.</summary>
    private static IEnumerable<DialogFault> InPseudoLanguage(IEnumerable<TextFile> files)
    {
        if (files.FirstOrDefault(file => file.Language == PseudoLanguage.Source) is not { } source) return [];
        var pseudo = PseudoLanguage.Of(source);
        return new WorstCase(new Phrasebook([pseudo]), pseudo).Faults()
            .Select(fault => fault with { Message = $"in a language a third longer {fault.Message}" });
    }

    private static LanguageStatus StatusOf(Phrasebook book, TextFile file, LexiconLoad words)
    {
        var segments = new WorstCase(book, file).Longest().Select(worst => Fit.Measure(worst.Text).Segments).ToList();
        var sentences = file.Texts.Where(text => text.IsSentence).SelectMany(text => Sentences.Of(text.Text)).Count();
        var lexicon = words.Lexicons.FirstOrDefault(lexicon => lexicon.Language == file.Language);
        return new LanguageStatus(file.Language, file.Reviewed, file.Messages.Count)
        {
            MessagesBySegments = segments.CountBy(count => count).ToDictionary(),
            Sentences = sentences,
            WordsASentence = Sentences.AverageIn(file),
            Notes = file.Noted.Count,
            Phrases = lexicon is null ? new Dictionary<string, int>() : WordClashes.PhrasesBySection(lexicon),
        };
    }
}
