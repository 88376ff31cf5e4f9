namespace HeapText.Carriers.Smpp.Wire;

/// <summary>How octets stand for characters.</summary>
public enum Alphabet
{
    /// <summary>GSM 7-bit default alphabet, one septet to an octet.</summary>
    Gsm7,

    /// <summary>IA5, which is ASCII.</summary>
    Ascii,

    /// <summary>ISO 8859-1.</summary>
    Latin1,

    /// <summary>UCS-2, the higher octet first; pairs of surrogates are borne.</summary>
    Ucs2,

    /// <summary>No text.</summary>
    Binary,
}
