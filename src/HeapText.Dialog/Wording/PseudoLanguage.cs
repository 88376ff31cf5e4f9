using System.Text;

namespace HeapText.Dialog.Wording;

/// <summary>A made-up language for trials: every word of another, with accents and about a third longer.</summary>
/// <remarks>Where it is spoken, a word without accents was never in a text.yml; what breaks its budget in it is close
/// to doing so in a language of longer words. It keeps to the GSM 7-bit alphabet.</remarks>
internal static class PseudoLanguage
{
    /// <summary>Its code; no language has it.</summary>
    public const string Code = "qps";

    /// <summary>The language it is made from.</summary>
    public const string Source = "en";

    private const int LettersToOneMore = 3;
    private const string Plain = "aeiouAEIOU";
    private const string Accented = "àèìòùÅÉÄÖÜ";

    /// <summary>Every word of a file made strange; its keys and placeholders stay.</summary>
    public static TextFile Of(TextFile file)
    {
        var spoken = new Spoken(file);
        return file with
        {
            Language = Code,
            Numbers = [.. Enumerable.Range(0, Spoken.MostInWords + 1).Select(n => Strange(spoken.InWords(n)))],
            Ordinals = [.. Enumerable.Range(1, Spoken.MostInWords).Select(n => Strange(spoken.AsOrdinal(n)))],
            Forms = Strange(file.Forms),
            Messages = Strange(file.Messages),
            Counts = Strange(file.Counts),
            Measures = Strange(file.Measures),
            Weekdays = [.. file.Weekdays.Select(Strange)],
            Months = [.. file.Months.Select(Strange)],
            Hours = file.Hours.ToDictionary(hour => hour.Key, hour => Strange(hour.Value)),
            Materials = Strange(file.Materials),
            Causes = Strange(file.Causes),
            Actions = Strange(file.Actions),
            Crops = Strange(file.Crops),
        };
    }

    /// <summary>A text with each vowel accented, and lengthened where the text is not yet a third longer.</summary>
    public static string Strange(string text)
    {
        var strange = new StringBuilder(text.Length * 2);
        var owed = 0;
        foreach (var letter in text)
        {
            var vowel = Plain.IndexOf(letter, StringComparison.Ordinal);
            var made = vowel < 0 ? letter : Accented[vowel];
            owed++;
            var isDoubled = vowel >= 0 && owed >= LettersToOneMore;
            strange.Append(made, isDoubled ? 2 : 1);
            if (isDoubled) owed -= LettersToOneMore;
        }
        return strange.ToString();
    }

    private static Dictionary<string, string> Strange(IReadOnlyDictionary<string, string> texts) =>
        texts.ToDictionary(text => text.Key, text => Strange(text.Value));

    private static Dictionary<string, Template> Strange(IReadOnlyDictionary<string, Template> texts) =>
        texts.ToDictionary(text => text.Key, text => text.Value.Reworded(Strange));

    private static Dictionary<string, PluralForms> Strange(IReadOnlyDictionary<string, PluralForms> words) =>
        words.ToDictionary(word => word.Key, word => new PluralForms(Strange(word.Value.Forms)));
}
