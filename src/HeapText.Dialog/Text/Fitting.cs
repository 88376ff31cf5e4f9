namespace HeapText.Dialog.Text;

/// <summary>How the characters of a message travel.</summary>
public enum TextEncoding
{
    /// <summary>GSM 7-bit default alphabet; units are septets.</summary>
    Gsm7,

    /// <summary>Two octets a character; units are UTF-16 code units.</summary>
    Ucs2,
}

/// <summary>What a text takes on a phone network.</summary>
/// <param name="Encoding">The smaller encoding that holds every character.</param>
/// <param name="Units">Septets or UTF-16 code units.</param>
/// <param name="Segments">Messages it travels as; an empty text still takes one.</param>
/// <param name="SegmentUnits">Units in each segment.</param>
/// <param name="UssdPages">Screens it takes on USSD.</param>
public sealed record Fitting(
    TextEncoding Encoding, int Units, int Segments, IReadOnlyList<int> SegmentUnits, int UssdPages)
{
    /// <summary>The encoding's name in JSON: <c>GSM7</c> or <c>UCS2</c>.</summary>
    public string EncodingName => Encoding == TextEncoding.Gsm7 ? "GSM7" : "UCS2";
}
