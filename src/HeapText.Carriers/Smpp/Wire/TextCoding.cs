using System.Text;
using HeapText.Dialog.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Octets to texts and back, by data_coding.</summary>
/// <remarks>
/// Sources: SMPP 3.4, section 5.2.19 (0 the peer's default, 1 IA5, 2 and 4 binary, 3 Latin-1, 8 UCS-2), and
/// 3GPP TS 23.038, section 4 (the groups of message classes and of waiting messages), both from memory.
/// </remarks>
internal static class TextCoding
{
    public const byte Default = 0x00, Latin1 = 0x03, Binary = 0x04, Ucs2 = 0x08;

    /// <summary>What stands for octets that are no character.</summary>
    public const char Replacement = '\uFFFD';

    private static readonly Encoding StrictAscii = Encoding.GetEncoding(
        "us-ascii", EncoderFallback.ExceptionFallback, new DecoderReplacementFallback(Replacement.ToString()));

    /// <summary>The alphabet of a data_coding.</summary>
    /// <param name="dataCoding">As it stands in the PDU.</param>
    /// <param name="whenDefault">What 0 means on the line.</param>
    public static Alphabet AlphabetOf(byte dataCoding, Alphabet whenDefault) => dataCoding switch
    {
        Default => whenDefault,
        0x01 => Alphabet.Ascii,
        0x02 or Binary => Alphabet.Binary,
        Latin1 => Alphabet.Latin1,
        Ucs2 => Alphabet.Ucs2,
        >= 0x10 and < 0x20 => OfClassBits(dataCoding),
        >= 0xC0 and < 0xE0 => Alphabet.Gsm7,
        >= 0xE0 and < 0xF0 => Alphabet.Ucs2,
        >= 0xF0 => (dataCoding & 0x04) == 0 ? Alphabet.Gsm7 : Alphabet.Binary,
        _ => Alphabet.Binary,
    };

    /// <summary>The text of octets. Never fails: what is no character becomes <see cref="Replacement"/>, and of binary
    /// octets only those that are ASCII are shown.</summary>
    /// <param name="octets">Without a user data header.</param>
    /// <param name="alphabet">How they stand for characters.</param>
    /// <param name="languages">National languages that the header named, for the GSM alphabet.</param>
    public static string Decode(
        ReadOnlySpan<byte> octets, Alphabet alphabet, (byte? Single, byte? Locking) languages = default) =>
        alphabet switch
        {
            Alphabet.Gsm7 => DecodeSeptets(octets, languages),
            Alphabet.Latin1 => Encoding.Latin1.GetString(octets),
            Alphabet.Ucs2 => Encoding.BigEndianUnicode.GetString(octets),
            _ => StrictAscii.GetString(octets),
        };

    /// <summary>True when every character of a text can be sent in an alphabet.</summary>
    public static bool Holds(Alphabet alphabet, string text) => alphabet switch
    {
        Alphabet.Gsm7 => Fit.Measure(text).Encoding == TextEncoding.Gsm7,
        Alphabet.Ascii => Ascii.IsValid(text),
        Alphabet.Latin1 => !text.AsSpan().ContainsAnyExceptInRange('\0', '\u00ff'),
        Alphabet.Ucs2 => true,
        _ => false,
    };

    /// <summary>The octets of a text that the alphabet holds; a lone surrogate goes as the replacement
    /// character.</summary>
    /// <exception cref="ArgumentException">The alphabet lacks a character.</exception>
    public static byte[] Encode(string text, Alphabet alphabet)
    {
        if (!Holds(alphabet, text)) throw new ArgumentException($"A character is not in {alphabet}.", nameof(text));
        return alphabet switch
        {
            Alphabet.Gsm7 => Septets.Write(text),
            Alphabet.Ucs2 => Encoding.BigEndianUnicode.GetBytes(text),
            _ => Encoding.Latin1.GetBytes(text),
        };
    }

    // Bits 3 and 2 of the general group: 00 the GSM alphabet, 01 binary, 10 UCS-2.
    private static Alphabet OfClassBits(byte dataCoding) => (dataCoding >> 2 & 0x03) switch
    {
        0 => Alphabet.Gsm7,
        2 => Alphabet.Ucs2,
        _ => Alphabet.Binary,
    };

    // An octet with its highest bit set is no septet.
    private static string DecodeSeptets(ReadOnlySpan<byte> octets, (byte? Single, byte? Locking) languages)
    {
        var text = new StringBuilder(octets.Length);
        while (true)
        {
            var valid = octets.IndexOfAnyInRange((byte)0x80, (byte)0xFF);
            var run = valid < 0 ? octets : octets[..valid];
            text.Append(Septets.Read(run, languages.Single, languages.Locking));
            if (valid < 0) return text.ToString();
            text.Append(Replacement);
            octets = octets[(valid + 1)..];
        }
    }
}
