namespace HeapText.Carriers.Smpp.Wire;

/// <summary>message_state.</summary>
/// <remarks>Source: SMPP 3.4, section 5.2.28, table 5-6, from memory.</remarks>
internal enum MessageState : byte
{
    Enroute = 1,
    Delivered = 2,
    Expired = 3,
    Deleted = 4,
    Undeliverable = 5,
    Accepted = 6,
    Unknown = 7,
    Rejected = 8,
}

/// <summary>network_error_code.</summary>
/// <param name="Network">1 ANSI-136, 2 IS-95, 3 GSM; SMPP 3.4, section 5.3.2.31, from memory.</param>
/// <param name="Code">The network's own.</param>
internal readonly record struct NetworkError(byte Network, ushort Code);

/// <summary>ussd_service_op: what a message of a USSD session is.</summary>
/// <remarks>Source: SMPP 3.4, section 5.3.2.44, from memory.</remarks>
internal enum UssdServiceOp : byte
{
    PssdIndication = 0,
    PssrIndication = 1,
    UssrRequest = 2,
    UssnRequest = 3,
    PssdResponse = 16,
    PssrResponse = 17,
    UssrConfirm = 18,
    UssnConfirm = 19,
}

/// <summary>its_session_info: where a message stands in a session.</summary>
/// <param name="Session">Number of the session.</param>
/// <param name="Step">Number of the message in it, 0 to 127.</param>
/// <param name="Ends">True when the session ends with it.</param>
/// <remarks>Source: SMPP 3.4, section 5.3.2.43, from memory: an octet of session number; seven bits of message number;
/// one bit for the end.</remarks>
internal readonly record struct ItsSessionInfo(byte Session, byte Step, bool Ends)
{
    /// <summary>The two octets on the wire.</summary>
    public byte[] ToOctets() => [Session, (byte)((Step & 0x7F) << 1 | (Ends ? 1 : 0))];

    /// <summary>Reads two octets.</summary>
    public static ItsSessionInfo Of(ReadOnlySpan<byte> octets) =>
        new(octets[0], (byte)(octets[1] >> 1), (octets[1] & 1) != 0);
}
