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
        var materials = MaterialTable.All.Select(material => material.Key).ToHashSet(StringComparer.Ordinal);
        string[] measures = [.. Measures.Default.All.Select(measure => measure.Key), Measures.Kilogram];
        var (book, faults) = PhrasebookLoader.Load(folder, materials, measures);
        var words = Lexicon.Load(folder, materials);
        List<DialogFault> all = [.. faults, .. words.Faults];
        if (book is null || words.Faults.Count > 0) return (null, all);
        return (new DialogSet(book, new Reader(words.Lexicons), new AnswerReader(words.Lexicons)), all);
    }
}
