namespace HeapText.Carriers.Smpp.Wire;

/// <summary>The bits of esm_class.</summary>
/// <remarks>Source: SMPP 3.4, section 5.2.12, from memory.</remarks>
internal static class EsmClass
{
    /// <summary>The octets begin with a user data header (UDHI).</summary>
    public const byte HasHeader = 0x40;

    private const byte TypeBits = 0x3C, Receipt = 0x04, IntermediateNotice = 0x20;

    /// <summary>True when the octets begin with a user data header.</summary>
    public static bool IsHeaded(byte esmClass) => (esmClass & HasHeader) != 0;

    /// <summary>True of a deliver_sm that reports on a message sent before, finally or on its way.</summary>
    public static bool IsReceipt(byte esmClass) => (esmClass & TypeBits) is Receipt or IntermediateNotice;

    /// <summary>True of a report on a message that is still on its way.</summary>
    public static bool IsIntermediate(byte esmClass) => (esmClass & TypeBits) == IntermediateNotice;
}
