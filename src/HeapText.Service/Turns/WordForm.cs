using HeapText.Agronomy.Materials;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Service.Turns;

/// <summary>What a trainer writes to explain a word, and what is wrong with it.</summary>
/// <param name="District">Where it is used.</param>
/// <param name="Language">Two-letter code of its language.</param>
/// <param name="Word">The word.</param>
/// <param name="Material">Key or name of a material, or <see cref="WordDesk.Nothing"/>.</param>
internal sealed record WordForm(string? District, string? Language, string? Word, string? Material)
{
    /// <summary>The word to remember; null with the fault, which starts with the field's name.</summary>
    public (OwnWord? Word, string? Fault) Read(IReadOnlyList<string> districts, Phrasebook? book, Reader? reader)
    {
        if (District is null || !districts.Contains(District))
            return (null, $"district: there is no such district; use one of {string.Join(", ", districts)}");
        if (Language is null || (book is not null && !book.Speaks(Language)))
            return (null, $"language: use one of {string.Join(", ", book?.Languages ?? [])}");
        if (OwnWord.Plain(Word ?? "") is not { } plain)
            return (null, $"word: give one word of 2 to {OwnWord.Longest} letters");
        if (reader is not null && !reader.MayMean(plain))
            return (null, $"word: '{plain}' means something else already, such as a number, a measure or a wish");
        if (Material == WordDesk.Nothing) return (new OwnWord(District, plain, Language, null), null);
        return KeyOf(Material ?? "", book?.File(Language)) is { } key
            ? (new OwnWord(District, plain, Language, key), null)
            : (null, $"material: give the key or name of a material, or {WordDesk.Nothing}");
    }

    private static string? KeyOf(string material, TextFile? file) => MaterialTable.TryFind(material, out _)
        ? material
        : file?.Materials.Where(named => string.Equals(named.Value, material, StringComparison.OrdinalIgnoreCase))
            .Select(named => named.Key).FirstOrDefault();
}
