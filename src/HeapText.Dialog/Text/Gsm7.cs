using System.Collections.Frozen;

namespace HeapText.Dialog.Text;

/// <summary>The GSM 7-bit default alphabet and its extension table.</summary>
/// <remarks>Source: 3GPP TS 23.038, section 6.2.1 (default alphabet) and 6.2.1.1 (extension table).</remarks>
internal static class Gsm7
{
    public const char Escape = '\u001b';

    // In septet order, 16 to a line; position 27 is the escape to the extension table, which no text may hold.
    public const string Default =
        "@£$¥èéùìòÇ\nØø\rÅå" +
        "Δ_ΦΓΛΩΠΨΣΘΞ\u001bÆæßÉ" +
        " !\"#¤%&'()*+,-./" +
        "0123456789:;<=>?" +
        "¡ABCDEFGHIJKLMNO" +
        "PQRSTUVWXYZÄÖÑÜ§" +
        "¿abcdefghijklmno" +
        "pqrstuvwxyzäöñüà";

    /// <summary>Characters of the extension table by the septet after the escape.</summary>
    public static readonly FrozenDictionary<byte, char> Extension = new (byte Septet, char Character)[]
    {
        (0x0A, '\f'), (0x14, '^'), (0x28, '{'), (0x29, '}'), (0x2F, '\\'), (0x3C, '['), (0x3D, '~'),
        (0x3E, ']'), (0x40, '|'), (0x65, '€'),
    }.ToFrozenDictionary(one => one.Septet, one => one.Character);

    private const int EscapedBit = 0x100;

    // The septet of each character, with the bit set where the escape stands before it.
    private static readonly FrozenDictionary<char, int> Codes =
        Enumerable.Range(0, Default.Length).Where(septet => Default[septet] != Escape)
            .Select(septet => (Character: Default[septet], Code: septet))
            .Concat(Extension.Select(one => (Character: one.Value, Code: one.Key | EscapedBit)))
            .ToFrozenDictionary(pair => pair.Character, pair => pair.Code);

    // Counted for every character of every message, so by index up to the highest character there is.
    private static readonly byte[] Costs = [.. Enumerable.Range(0, Codes.Keys.Max() + 1).Select(character =>
        Codes.TryGetValue((char)character, out var code) ? (code & EscapedBit) != 0 ? (byte)2 : (byte)1 : (byte)0)];

    /// <summary>How many septets a character takes: 1, 2 with the escape, or 0 when the alphabet lacks it.</summary>
    public static int Cost(char character) => character < Costs.Length ? Costs[character] : 0;

    /// <summary>The septet of a character, and whether the escape stands before it; null when the alphabet lacks
    /// it.</summary>
    public static (byte Septet, bool IsEscaped)? Code(char character) =>
        Codes.TryGetValue(character, out var code) ? ((byte)(code & 0x7F), (code & EscapedBit) != 0) : null;
}
