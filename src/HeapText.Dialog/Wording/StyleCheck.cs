using System.Globalization;
using System.Text.RegularExpressions;

namespace HeapText.Dialog.Wording;

/// <summary>Checks that texts for farmers are in plain words and short sentences.</summary>
internal sealed partial class StyleCheck(TextFile file)
{
    public IEnumerable<DialogFault> Faults() =>
    [
        .. file.Texts.SelectMany(AvoidedIn),
        .. file.Texts.Where(text => text.IsSentence).SelectMany(LongIn),
        .. TooLongOnAverage(),
    ];

    private IEnumerable<DialogFault> AvoidedIn(FarmerText text) =>
        from avoided in file.Avoid
        let found = avoided.FoundIn(Placeholder().Replace(text.Text, " "))
        where found is not null
        select At(text, $"'{text.Key}' says '{found}': {avoided.Instead}");

    private IEnumerable<DialogFault> LongIn(FarmerText text) =>
        from sentence in Sentences.Of(text.Text)
        let words = Sentences.WordsIn(sentence)
        where words > Sentences.MostInOne
        select At(text, $"'{text.Key}' has a sentence of {words} words, at most {Sentences.MostInOne}: {sentence}");

    private IEnumerable<DialogFault> TooLongOnAverage()
    {
        var average = Sentences.AverageIn(file);
        if (average > Sentences.MostOnAverage)
            yield return file.FaultAt("messages", null, string.Create(CultureInfo.InvariantCulture,
                $"a sentence has {average:0.0} words on average, at most {Sentences.MostOnAverage}"));
    }

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Placeholder();

    private DialogFault At(FarmerText text, string message) => new(file.Path, text.Line, text.Column, message);
}
