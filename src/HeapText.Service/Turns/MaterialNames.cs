using HeapText.Dialog.Wording;

namespace HeapText.Service.Turns;

/// <summary>What materials are called on pages for trainers.</summary>
/// <param name="Book">The words of all languages; null to call materials by their keys.</param>
internal sealed record MaterialNames(Phrasebook? Book)
{
    private const string Language = "en";

    /// <summary>The name of a material.</summary>
    public string Of(string key) => Book is { } book && book.Speaks(Language)
        ? book.File(Language).Materials[key]
        : key.Replace('-', ' ');
}
