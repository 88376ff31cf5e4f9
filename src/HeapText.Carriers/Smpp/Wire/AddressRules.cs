using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>A type of number with its numbering plan.</summary>
internal readonly record struct NumberKind(byte Ton, byte Npi);

/// <summary>How a line writes numbers and names.</summary>
/// <remarks>Source: SMPP 3.4, sections 5.2.5 and 5.2.6, from memory: TON 1 international, 2 national, 3 network
/// specific, 5 alphanumeric; NPI 1 E.164. Which of them a network wants for a short code is its own affair.</remarks>
internal sealed record AddressRules
{
    private const byte InternationalTon = 1, AlphanumericTon = 5;

    // Common practice, no source: networks give short codes of three to eight digits.
    private const int LongestShortCode = 8;

    /// <summary>Numbers in international form.</summary>
    public NumberKind International { get; init; } = new(InternationalTon, 1);

    /// <summary>Senders with a letter.</summary>
    public NumberKind Alphanumeric { get; init; } = new(AlphanumericTon, 0);

    /// <summary>Senders of up to eight digits.</summary>
    public NumberKind ShortCode { get; init; } = new(3, 0);

    /// <summary>A farmer's phone: digits without <c>+</c>.</summary>
    public Address Phone(Msisdn number) => Of(International, number.Value[1..]);

    /// <summary>The line's own sender: a number with or without <c>+</c>, a short code, or a name.</summary>
    public Address Sender(string sender)
    {
        if (sender.Length == 0) return Address.None;
        var digits = sender[0] == '+' ? sender[1..] : sender;
        if (digits.Length == 0 || digits.AsSpan().ContainsAnyExceptInRange('0', '9')) return Of(Alphanumeric, sender);
        return sender[0] != '+' && digits.Length <= LongestShortCode
            ? Of(ShortCode, digits)
            : Of(International, digits);
    }

    /// <summary>An address as a number reader takes it: <c>+</c> before international digits, all else as it
    /// came.</summary>
    public static string Written(Address address)
    {
        var isBare = address.Value.Length > 0 && char.IsAsciiDigit(address.Value[0])
            && !address.Value.StartsWith("00", StringComparison.Ordinal);
        return address.Ton == InternationalTon && isBare ? "+" + address.Value : address.Value;
    }

    private static Address Of(NumberKind kind, string value) => new(kind.Ton, kind.Npi, value);
}
