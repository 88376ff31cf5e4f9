using System.Text;

namespace HeapText.Dialog.Text;

/// <summary>Reads texts that come in as the septets of the GSM 7-bit alphabet, in any national language known
/// here, and writes them in the default one.</summary>
/// <remarks>
/// Source: 3GPP TS 23.038 section 6.1.2.1 (packing) and 6.2.1.2 (national languages); 3GPP TS 23.040 section 9.2.3.24
/// (user data header; element 24 hexadecimal names the single shift, 25 the locking shift).
/// </remarks>
public static class Septets
{
    private const byte SingleShiftElement = 0x24, LockingShiftElement = 0x25;
    private const int BitsOfSeptet = 7, BitsOfOctet = 8;
    private const byte EscapeSeptet = 0x1B;

    /// <summary>The text of a message's user data.</summary>
    /// <param name="userData">The octets, after the one that holds the length.</param>
    /// <param name="length">That length: septets, those that the header takes among them.</param>
    /// <param name="hasHeader">True when it begins with a user data header.</param>
    /// <returns>The text. A header that is cut short is taken for none of the text, and names no language; septets that
    /// are missing are left out.</returns>
    public static string ReadUserData(ReadOnlySpan<byte> userData, int length, bool hasHeader)
    {
        var headerOctets = hasHeader && userData.Length > 0 ? Math.Min(userData[0] + 1, userData.Length) : 0;
        var (single, locking) = LanguagesIn(userData[..headerOctets]);
        var headerSeptets = (headerOctets * BitsOfOctet + BitsOfSeptet - 1) / BitsOfSeptet;
        var septets = Unpack(userData, Math.Max(length, 0));
        return Read(septets.AsSpan(Math.Min(headerSeptets, septets.Length)), single, locking);
    }

    /// <summary>The text of septets, one to a byte.</summary>
    /// <param name="septets">Each 0 to 127; the highest bit is passed over.</param>
    /// <param name="singleShift">National language identifier of the single shift; null for the default table.</param>
    /// <param name="lockingShift">The same of the locking shift.</param>
    public static string Read(ReadOnlySpan<byte> septets, byte? singleShift = null, byte? lockingShift = null)
    {
        var extension = NationalShift.Of(singleShift).Single;
        var alphabet = NationalShift.Of(lockingShift).Locking;
        var text = new StringBuilder(septets.Length);
        for (var i = 0; i < septets.Length; i++)
        {
            var septet = (byte)(septets[i] & 0x7F);
            if (septet != EscapeSeptet) text.Append(alphabet[septet]);
            else if (++i < septets.Length) text.Append(AfterEscape((byte)(septets[i] & 0x7F), extension, alphabet));
        }
        return text.ToString();
    }

    /// <summary>The septets of a text, one to a byte, in the default alphabet with its extension table.</summary>
    /// <exception cref="ArgumentException">A character is not in the alphabet.</exception>
    public static byte[] Write(ReadOnlySpan<char> text)
    {
        var septets = new List<byte>(text.Length);
        foreach (var character in text)
        {
            if (Gsm7.Code(character) is not { } code)
                throw new ArgumentException("A character is not in the GSM 7-bit alphabet.", nameof(text));
            if (code.IsEscaped) septets.Add(EscapeSeptet);
            septets.Add(code.Septet);
        }
        return [.. septets];
    }

    /// <summary>Septets out of octets, the lowest bits first.</summary>
    /// <param name="octets">Packed septets.</param>
    /// <param name="count">How many septets there are; fewer are given where the octets end.</param>
    public static byte[] Unpack(ReadOnlySpan<byte> octets, int count)
    {
        var septets = new byte[Math.Min(count, octets.Length * BitsOfOctet / BitsOfSeptet)];
        for (var i = 0; i < septets.Length; i++)
        {
            var (octet, bit) = Math.DivRem(i * BitsOfSeptet, BitsOfOctet);
            var pair = octets[octet] | (octet + 1 < octets.Length ? octets[octet + 1] << BitsOfOctet : 0);
            septets[i] = (byte)(pair >> bit & 0x7F);
        }
        return septets;
    }

    /// <summary>The national languages that a user data header names; null where it names none.</summary>
    /// <param name="header">The header with the octet that holds its length.</param>
    public static (byte? Single, byte? Locking) LanguagesIn(ReadOnlySpan<byte> header)
    {
        (byte? single, byte? locking) = (null, null);
        for (var at = 1; at + 2 < header.Length; at += 2 + header[at + 1])
        {
            if (header[at + 1] != 1) continue;
            if (header[at] == SingleShiftElement) single = header[at + 2];
            else if (header[at] == LockingShiftElement) locking = header[at + 2];
        }
        return (single, locking);
    }

    // A second escape is kept for tables still to come, and shown as a space; a septet that the table lacks is shown as
    // in the alphabet.
    private static char AfterEscape(byte septet, IReadOnlyDictionary<byte, char> extension, string alphabet) =>
        septet == EscapeSeptet ? ' ' : extension.GetValueOrDefault(septet, alphabet[septet]);
}
