using System.Collections.Frozen;

namespace HeapText.Dialog.Text;

/// <summary>The tables of a national language: one that takes the place of the default alphabet (locking shift), and
/// one that takes the place of the extension table (single shift).</summary>
/// <remarks>
/// Source: 3GPP TS 23.038, annex A.2 (single shift) and A.3 (locking shift), from memory; the letters agree with
/// several published decoders. Of its thirteen languages these three are here, which networks in Africa may meet; the
/// standard bids to read a language that is not known by the default tables.
/// </remarks>
internal sealed record NationalShift(string Locking, FrozenDictionary<byte, char> Single)
{
    private const string FiguresAndMarks = " !\"#¤%&'()*+,-./0123456789:;<=>?";

    // A.3.1: Turkish.
    private const string TurkishLocking =
        "@£$¥€éùıòÇ\nĞğ\rÅå" +
        "Δ_ΦΓΛΩΠΨΣΘΞ\u001bŞşßÉ" +
        FiguresAndMarks +
        "İABCDEFGHIJKLMNO" +
        "PQRSTUVWXYZÄÖÑÜ§" +
        "çabcdefghijklmno" +
        "pqrstuvwxyzäöñüà";

    // A.3.3: Portuguese.
    private const string PortugueseLocking =
        "@£$¥êéúíóç\nÔô\rÁá" +
        "Δ_ªÇÀ∞^\\€Ó|\u001bÂâÊÉ" +
        " !\"#º%&'()*+,-./0123456789:;<=>?" +
        "ÍABCDEFGHIJKLMNO" +
        "PQRSTUVWXYZÃÕÚÜ§" +
        "~abcdefghijklmno" +
        "pqrstuvwxyzãõ`üà";

    private static readonly FrozenDictionary<byte, NationalShift> Languages = new Dictionary<byte, NationalShift>
    {
        // A.2.1: Turkish.
        [1] = new(TurkishLocking, With(
            (0x47, 'Ğ'), (0x49, 'İ'), (0x53, 'Ş'), (0x63, 'ç'), (0x67, 'ğ'), (0x69, 'ı'), (0x73, 'ş'))),
        // A.2.2: Spanish, which has no locking shift.
        [2] = new(Gsm7.Default, With(
            (0x09, 'ç'), (0x41, 'Á'), (0x49, 'Í'), (0x4F, 'Ó'), (0x55, 'Ú'),
            (0x61, 'á'), (0x69, 'í'), (0x6F, 'ó'), (0x75, 'ú'))),
        // A.2.3: Portuguese.
        [3] = new(PortugueseLocking, With(
            (0x05, 'ê'), (0x09, 'ç'), (0x0B, 'Ô'), (0x0C, 'ô'), (0x0E, 'Á'), (0x0F, 'á'),
            (0x12, 'Φ'), (0x13, 'Γ'), (0x15, 'Ω'), (0x16, 'Π'), (0x17, 'Ψ'), (0x18, 'Σ'), (0x19, 'Θ'), (0x1F, 'Ê'),
            (0x41, 'À'), (0x49, 'Í'), (0x4F, 'Ó'), (0x55, 'Ú'), (0x5B, 'Ã'), (0x5C, 'Õ'), (0x61, 'Â'),
            (0x69, 'í'), (0x6F, 'ó'), (0x75, 'ú'), (0x7B, 'ã'), (0x7C, 'õ'), (0x7F, 'â'))),
    }.ToFrozenDictionary();

    /// <summary>The tables that stand in every phone.</summary>
    private static readonly NationalShift None = new(Gsm7.Default, Gsm7.Extension);

    /// <summary>The tables of a national language identifier; the default ones for one that is not known.</summary>
    public static NationalShift Of(byte? identifier) =>
        identifier is { } known && Languages.TryGetValue(known, out var shift) ? shift : None;

    // Each of these keeps all of the default extension table and adds to it.
    private static FrozenDictionary<byte, char> With(params (byte Septet, char Character)[] more) =>
        Gsm7.Extension.Concat(more.Select(one => KeyValuePair.Create(one.Septet, one.Character))).ToFrozenDictionary();
}
