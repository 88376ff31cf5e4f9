using System.Collections.Frozen;

namespace HeapText.Dialog.Text;

/// <summary>The GSM 7-bit default alphabet and its extension table.</summary>
/// <remarks>Source: 3GPP TS 23.038, section 6.2.1 (default alphabet) and 6.2.1.1 (extension table).</remarks>
internal static class Gsm7
{
    private const char Escape = '\u001b';

    // In septet order, 16 to a line; position 27 is the escape to the extension table, which no text may hold.
    private const string Default =
        "@£$¥èéùìòÇ\nØø\rÅå" +
        "Δ_ΦΓΛΩΠΨΣΘΞ\u001bÆæßÉ" +
        " !\"#¤%&'()*+,-./" +
        "0123456789:;<=>?" +
        "¡ABCDEFGHIJKLMNO" +
        "PQRSTUVWXYZÄÖÑÜ§" +
        "¿abcdefghijklmno" +
        "pqrstuvwxyzäöñüà";

    private const string Extension = "\f^{}\\[~]|€";

    private static readonly FrozenDictionary<char, int> Septets = Default.Where(c => c != Escape)
        .Select(c => (Character: c, Cost: 1))
        .Concat(Extension.Select(c => (Character: c, Cost: 2)))
        .ToFrozenDictionary(pair => pair.Character, pair => pair.Cost);

    /// <summary>How many septets a character takes: 1, 2 with the escape, or 0 when the alphabet lacks it.</summary>
    public static int Cost(char character) => Septets.GetValueOrDefault(character);
}
