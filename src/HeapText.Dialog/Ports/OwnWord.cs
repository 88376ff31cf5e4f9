using HeapText.Agronomy.Materials;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Ports;

/// <summary>A farmers' word that the trainer has explained, once for all farmers of the district.</summary>
/// <param name="District">Where it is understood.</param>
/// <param name="Word">As <see cref="Plain"/> gives it.</param>
/// <param name="Language">Two-letter code of the language it belongs to.</param>
/// <param name="Material">Key of the material it names, one that never goes in included; null when it names none and
/// is to be passed over.</param>
public sealed record OwnWord(string District, string Word, string Language, string? Material)
{
    /// <summary>Most letters of a word.</summary>
    public const int Longest = 24;

    private const int Shortest = 2;

    /// <summary>True when the material never goes into a heap.</summary>
    public bool IsRefused => Material is not null && MaterialTable.TryFind(Material, out var known)
        && known.Refusal is not null;

    /// <summary>A single word in the letters in which texts are compared: small, without accents and apostrophes.
    /// Null when the text is no single word of 2 to <see cref="Longest"/> letters.</summary>
    public static string? Plain(string text) =>
        Letters.Words(text).ToList() is [{ Length: >= Shortest and <= Longest } word] && word.All(char.IsLetter)
            ? word
            : null;
}
