using HeapText.Agronomy.Materials;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Everything under dialogs/, read: the words to say and the words to understand.</summary>
public sealed record DialogSet(Phrasebook Book, Reader Reader, AnswerReader Answers)
{
    /// <summary>Reads a dialogs folder.</summary>
    /// <param name="folder">The folder that holds one folder a language.</param>
    /// <returns>The set, or null when a fault keeps it from being used; and every fault found, in all files.</returns>
    public static (DialogSet? Dialogs, IReadOnlyList<DialogFault> Faults) Load(string folder)
    {
        var (texts, words) = Read(folder);
        List<DialogFault> all = [.. texts.Faults, .. words.Faults];
        if (texts.Book is not { } book || words.Faults.Count > 0) return (null, all);
        return (new DialogSet(book, new Reader(words.Lexicons), new AnswerReader(words.Lexicons)), all);
    }

    /// <summary>The texts and the words of a folder, faulty or not.</summary>
    internal static (PhrasebookLoad Texts, LexiconLoad Words) Read(string folder)
    {
        var materials = MaterialTable.All.Select(material => material.Key).ToHashSet(StringComparer.Ordinal);
        string[] measures = [.. Measures.Default.All.Select(measure => measure.Key), Measures.Kilogram];
        return (PhrasebookLoader.Load(folder, materials, measures), Lexicon.Load(folder, materials));
    }
}
