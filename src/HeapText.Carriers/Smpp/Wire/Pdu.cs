namespace HeapText.Carriers.Smpp.Wire;

/// <summary>One protocol data unit. Requests always have the status <see cref="CommandStatus.Ok"/>.</summary>
/// <param name="Sequence">1 to 0x7FFFFFFF; a response has its request's. A peer's other numbers are kept as they came;
/// 0 stands in a <see cref="GenericNack"/> whose cause could not be read.</param>
/// <param name="Status">What is said of the request.</param>
/// <remarks>Source: SMPP 3.4, section 4, from memory.</remarks>
internal abstract record Pdu(uint Sequence, CommandStatus Status)
{
    /// <summary>The highest sequence number; 1 follows it.</summary>
    public const uint LastSequence = 0x7FFFFFFF;

    private const uint ResponseBit = 0x80000000;

    /// <summary>Its number on the wire.</summary>
    public abstract CommandId CommandId { get; }

    /// <summary>True when it answers a request, so that it must never be answered itself.</summary>
    public bool IsResponse => ((uint)CommandId & ResponseBit) != 0;

    /// <summary>Kind, sequence and status alone: passwords, numbers and texts stay out of logs.</summary>
    public sealed override string ToString() => $"{CommandId} {Sequence} {Status}";

    /// <summary>bind_receiver, bind_transmitter or bind_transceiver, as the mode says. A system id has up to 15
    /// characters, a password up to 8.</summary>
    internal sealed record Bind(uint Sequence, BindMode Mode, string SystemId, string Password)
        : Pdu(Sequence, CommandStatus.Ok)
    {
        /// <summary>SMPP 3.4 as interface_version says it.</summary>
        public const byte Version34 = 0x34;

        /// <summary>Up to 12 characters.</summary>
        public string SystemType { get; init; } = "";

        public byte InterfaceVersion { get; init; } = Version34;

        /// <summary>TON, NPI and address_range (up to 40 characters): the addresses served; empty for all.</summary>
        public Address Range { get; init; } = Address.None;

        public override CommandId CommandId => (CommandId)Mode;
    }

    /// <summary>Answer to a bind, with the peer's name; null when it gave none, as with an error.</summary>
    internal sealed record BindResp(
        uint Sequence, CommandStatus Status, BindMode Mode, string? SystemId, Tlvs Tlvs) : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => (CommandId)((uint)Mode | ResponseBit);
    }

    /// <summary>unbind.</summary>
    internal sealed record Unbind(uint Sequence) : Pdu(Sequence, CommandStatus.Ok)
    {
        public override CommandId CommandId => CommandId.Unbind;
    }

    /// <summary>unbind_resp.</summary>
    internal sealed record UnbindResp(uint Sequence, CommandStatus Status) : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => CommandId.UnbindResp;
    }

    /// <summary>enquire_link.</summary>
    internal sealed record EnquireLink(uint Sequence) : Pdu(Sequence, CommandStatus.Ok)
    {
        public override CommandId CommandId => CommandId.EnquireLink;
    }

    /// <summary>enquire_link_resp.</summary>
    internal sealed record EnquireLinkResp(uint Sequence, CommandStatus Status) : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => CommandId.EnquireLinkResp;
    }

    /// <summary>submit_sm: a message to a phone.</summary>
    internal sealed record SubmitSm(uint Sequence, MessageBody Body) : Pdu(Sequence, CommandStatus.Ok)
    {
        public override CommandId CommandId => CommandId.SubmitSm;
    }

    /// <summary>submit_sm_resp, with the peer's id of the message, up to 64 characters; null when it gave none, as with
    /// an error.</summary>
    internal sealed record SubmitSmResp(uint Sequence, CommandStatus Status, string? MessageId)
        : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => CommandId.SubmitSmResp;
    }

    /// <summary>deliver_sm: a message from a phone, or a receipt.</summary>
    internal sealed record DeliverSm(uint Sequence, MessageBody Body) : Pdu(Sequence, CommandStatus.Ok)
    {
        public override CommandId CommandId => CommandId.DeliverSm;
    }

    /// <summary>deliver_sm_resp; its message id is never used.</summary>
    internal sealed record DeliverSmResp(uint Sequence, CommandStatus Status) : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => CommandId.DeliverSmResp;
    }

    /// <summary>generic_nack: an answer to what could not be read, or is not known.</summary>
    internal sealed record GenericNack(uint Sequence, CommandStatus Status) : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => CommandId.GenericNack;
    }

    /// <summary>A PDU of a kind not known here: its number, and the octets that followed the header. A request among
    /// them is answered with a <see cref="GenericNack"/> of <see cref="CommandStatus.InvalidCommandId"/>.</summary>
    internal sealed record Unknown(uint Sequence, CommandStatus Status, uint Number, ReadOnlyMemory<byte> Octets)
        : Pdu(Sequence, Status)
    {
        public override CommandId CommandId => (CommandId)Number;
    }
}
