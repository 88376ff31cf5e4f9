namespace HeapText.Carriers.Smpp.Wire;

/// <summary>An optional parameter. Its value is never logged.</summary>
/// <param name="Tag">Its number; one that is not named is kept.</param>
/// <param name="Value">Up to 65,535 octets.</param>
internal readonly record struct Tlv(TlvTag Tag, ReadOnlyMemory<byte> Value)
{
    public override string ToString() => $"{Tag} ({Value.Length})";
}

/// <summary>The optional parameters that are read or written here.</summary>
/// <remarks>Source: SMPP 3.4, section 5.3.2, from memory.</remarks>
internal enum TlvTag : ushort
{
    /// <summary>receipted_message_id: C-octet string, up to 65 octets.</summary>
    ReceiptedMessageId = 0x001E,

    /// <summary>user_message_reference: 2 octets.</summary>
    UserMessageReference = 0x0204,

    /// <summary>sar_msg_ref_num: 2 octets.</summary>
    SarReference = 0x020C,

    /// <summary>sar_total_segments: 1 octet, 1 to 255.</summary>
    SarTotal = 0x020E,

    /// <summary>sar_segment_seqnum: 1 octet, from 1.</summary>
    SarPart = 0x020F,

    /// <summary>sc_interface_version: 1 octet.</summary>
    InterfaceVersion = 0x0210,

    /// <summary>network_error_code: 1 octet kind of network, 2 octets code.</summary>
    NetworkErrorCode = 0x0423,

    /// <summary>message_payload: octets of the text.</summary>
    MessagePayload = 0x0424,

    /// <summary>message_state: 1 octet.</summary>
    MessageState = 0x0427,

    /// <summary>ussd_service_op: 1 octet.</summary>
    UssdServiceOp = 0x0501,

    /// <summary>its_session_info: 2 octets.</summary>
    ItsSessionInfo = 0x1383,
}
