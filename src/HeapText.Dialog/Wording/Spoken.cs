using System.Globalization;
using Humanizer;

namespace HeapText.Dialog.Wording;

/// <summary>Numbers, ordinals and lists of one language in words: by Humanizer where it knows the language, else by the
/// words that its text.yml gives.</summary>
/// <remarks>
/// Humanizer 3.0 knows the numbers and ordinals of English, French and Portuguese; those of Swahili and Amharic it
/// gives in English, so their text.yml has its own. It knows dates only with their year, and in Portuguese with a
/// letter outside the GSM 7-bit alphabet, so the form <c>date</c> of each language writes them. The culture is always
/// that of the language, never that of the machine. Humanizer's own registries are closed once used and belong to the
/// whole process, so words of our own are kept here, where two phrasebooks may differ.
/// </remarks>
internal sealed class Spoken
{
    /// <summary>Placeholders for a number in words and for an ordinal, by the gender of what is counted.</summary>
    public const string Number = "number", NumberFeminine = "number-feminine",
        Ordinal = "ordinal", OrdinalFeminine = "ordinal-feminine";

    /// <summary>Numbers up to this one have words in every language; no method turns a heap more often.</summary>
    public const int MostInWords = 20;

    private readonly CultureInfo _culture;
    private readonly IReadOnlyList<string> _numbers;
    private readonly IReadOnlyList<string> _ordinals;

    public Spoken(TextFile file)
    {
        _culture = CultureInfo.GetCultureInfo(file.Language);
        (_numbers, _ordinals) = (file.Numbers, file.Ordinals);
    }

    /// <summary>True when Humanizer has words for the numbers of this language itself.</summary>
    public static bool IsKnownToHumanizer(string language) => language == HumanizersOwn
        || Converter(CultureInfo.GetCultureInfo(language)).GetType()
            != Converter(CultureInfo.InvariantCulture).GetType();

    /// <summary>Such as "three"; in figures beyond the words there are.</summary>
    public string InWords(int number, bool feminine = false)
    {
        if (_numbers.Count > 0) return number < _numbers.Count ? _numbers[number] : Figure(number);
        return Converter(_culture).Convert(number, feminine ? GrammaticalGender.Feminine : GrammaticalGender.Masculine);
    }

    /// <summary>Such as "third"; in figures beyond the words there are.</summary>
    public string AsOrdinal(int number, bool feminine = false)
    {
        if (_ordinals.Count > 0) return number <= _ordinals.Count ? _ordinals[number - 1] : Figure(number);
        var gender = feminine ? GrammaticalGender.Feminine : GrammaticalGender.Masculine;
        return Converter(_culture).ConvertToOrdinal(number, gender);
    }

    /// <summary>"a, b and c": Humanizer's plain list, the same in every language but for the comma and the last
    /// word.</summary>
    public static string List(IEnumerable<string> items, string and, string comma)
    {
        var all = items.ToList();
        IEnumerable<string> pair = all.Count < 2 ? all : [string.Join(comma, all[..^1]), all[^1]];
        return Configurator.CollectionFormatters.ResolveForCulture(CultureInfo.InvariantCulture).Humanize(pair, and);
    }

    // What Humanizer falls back to for a language that it does not know.
    private const string HumanizersOwn = "en";

    private static INumberToWordsConverter Converter(CultureInfo culture) =>
        Configurator.NumberToWordsConverters.ResolveForCulture(culture);

    private static string Figure(int number) => number.ToString(CultureInfo.InvariantCulture);
}
