using System.Text.RegularExpressions;

namespace HeapText.Dialog.Wording;

/// <summary>Cuts texts into sentences and words, to see whether they are short.</summary>
/// <remarks>A sentence ends with a full stop, a question or exclamation mark, or their like in Ethiopic script, before
/// a space or the end; each numbered choice of a list stands for itself. A placeholder counts as one word. Twelve words
/// on average and twenty for one sentence are chosen.</remarks>
internal static partial class Sentences
{
    /// <summary>Most words a sentence on average, and most in one.</summary>
    public const int MostOnAverage = 12, MostInOne = 20;

    public static IEnumerable<string> Of(string text) =>
        End().Split(text).Select(sentence => sentence.Trim()).Where(sentence => WordsIn(sentence) > 0);

    public static int WordsIn(string sentence) => Word().Count(sentence);

    /// <summary>Words a sentence on average over all sentences of a language; 0 where there are none.</summary>
    public static double AverageIn(TextFile file)
    {
        var sentences = file.Texts.Where(text => text.IsSentence).SelectMany(text => Of(text.Text)).ToList();
        return sentences.Count == 0 ? 0 : sentences.Average(WordsIn);
    }

    [GeneratedRegex(@"(?<=[.!?።፧])\s+|(?<=[:፦,፣])\s+(?=\d+ )")]
    private static partial Regex End();

    [GeneratedRegex(@"\{[^}]*\}|[\p{L}\p{M}\p{N}]+(['’-][\p{L}\p{M}\p{N}]+)*")]
    private static partial Regex Word();
}
