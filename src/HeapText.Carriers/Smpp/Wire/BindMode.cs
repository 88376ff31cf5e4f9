namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What a connection may carry, as the number of the request that opens it.</summary>
internal enum BindMode : uint
{
    /// <summary>Messages from phones only.</summary>
    Receiver = CommandId.BindReceiver,

    /// <summary>Messages to phones only.</summary>
    Transmitter = CommandId.BindTransmitter,

    /// <summary>Both ways.</summary>
    Transceiver = CommandId.BindTransceiver,
}
