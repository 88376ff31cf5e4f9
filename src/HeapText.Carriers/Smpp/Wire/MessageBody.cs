namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What submit_sm and deliver_sm both hold.</summary>
/// <remarks>Source: SMPP 3.4, sections 4.4.1 and 4.6.1, from memory; the fields bear the standard's names.</remarks>
internal sealed record MessageBody
{
    /// <summary>The most octets short_message holds; more go into message_payload.</summary>
    public const int MostShortMessage = 254;

    /// <summary>Up to 5 characters; empty for the peer's default.</summary>
    public string ServiceType { get; init; } = "";

    public Address Source { get; init; } = Address.None;

    public Address Destination { get; init; } = Address.None;

    /// <summary>Mode, type and features of the message; see <see cref="Wire.EsmClass"/>.</summary>
    public byte EsmClass { get; init; }

    public byte ProtocolId { get; init; }

    /// <summary>0 to 3.</summary>
    public byte PriorityFlag { get; init; }

    /// <summary>Empty for at once, else the standard's form of 16 characters.</summary>
    public string ScheduleDeliveryTime { get; init; } = "";

    /// <summary>Empty for the peer's default, else the standard's form of 16 characters.</summary>
    public string ValidityPeriod { get; init; } = "";

    /// <summary>1 asks for a receipt of the final state.</summary>
    public byte RegisteredDelivery { get; init; }

    public byte ReplaceIfPresent { get; init; }

    /// <summary>How the octets stand for characters.</summary>
    public byte DataCoding { get; init; }

    /// <summary>sm_default_msg_id.</summary>
    public byte DefaultMessageId { get; init; }

    /// <summary>Up to 254 octets; empty when message_payload holds the text. Never logged.</summary>
    public ReadOnlyMemory<byte> ShortMessage { get; init; }

    /// <summary>Optional parameters, in the order they came.</summary>
    public Tlvs Tlvs { get; init; } = Tlvs.None;

    /// <summary>The octets of the text, wherever they stand, with the user data header when there is one.</summary>
    public ReadOnlyMemory<byte> UserData =>
        ShortMessage.IsEmpty && Tlvs.MessagePayload is { } payload ? payload : ShortMessage;

    /// <summary>The class alone: numbers and texts stay out of logs.</summary>
    public override string ToString() => nameof(MessageBody);
}
