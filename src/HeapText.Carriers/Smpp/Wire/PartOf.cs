namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Which part of a long text a message is.</summary>
/// <param name="Kind">Where that is said; references of different kinds never belong together.</param>
/// <param name="Reference">The sender's number of the long text.</param>
/// <param name="Total">How many parts it has, from 1.</param>
/// <param name="Number">Which of them this is, from 1 to <paramref name="Total"/>.</param>
internal readonly record struct PartOf(PartKind Kind, ushort Reference, byte Total, byte Number)
{
    /// <summary>The part; null when the numbers make no sense, so that the message is a text of its own (3GPP TS
    /// 23.040, section 9.2.3.24.1).</summary>
    public static PartOf? Valid(PartKind kind, ushort reference, byte total, byte number) =>
        number >= 1 && number <= total ? new PartOf(kind, reference, total, number) : null;
}

/// <summary>Where a message says which part it is.</summary>
internal enum PartKind
{
    /// <summary>User data header with a reference of 8 bits, element 00.</summary>
    ShortReference,

    /// <summary>User data header with a reference of 16 bits, element 08.</summary>
    LongReference,

    /// <summary>The parameters sar_msg_ref_num, sar_total_segments and sar_segment_seqnum.</summary>
    Sar,
}
