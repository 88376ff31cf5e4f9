namespace HeapText.Carriers.Smpp.Wire;

/// <summary>The kinds of PDU that are read here.</summary>
/// <remarks>Source: SMPP 3.4, section 5.1.2.1, table 5-1, from memory. A response has its request's number with the
/// highest bit set.</remarks>
internal enum CommandId : uint
{
    BindReceiver = 0x01,
    BindTransmitter = 0x02,
    SubmitSm = 0x04,
    DeliverSm = 0x05,
    Unbind = 0x06,
    BindTransceiver = 0x09,
    EnquireLink = 0x15,
    GenericNack = 0x80000000,
    BindReceiverResp = 0x80000001,
    BindTransmitterResp = 0x80000002,
    SubmitSmResp = 0x80000004,
    DeliverSmResp = 0x80000005,
    UnbindResp = 0x80000006,
    BindTransceiverResp = 0x80000009,
    EnquireLinkResp = 0x80000015,
}
