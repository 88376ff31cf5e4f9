using System.Buffers;
using System.Buffers.Binary;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Takes PDUs out of a stream of octets.</summary>
/// <remarks>
/// Layout: SMPP 3.4, section 3.2 and 4, from memory: four 32-bit numbers, big-endian (length of the whole, command,
/// status, sequence), then the body. What peers really send is borne: a response of an error has no body that matters,
/// other responses may lack theirs, and optional parameters of unknown tags are kept.
/// </remarks>
internal static class PduReader
{
    public const int HeaderLength = 16;

    /// <summary>Longest PDU that is taken unless the line says otherwise: 64 KB.</summary>
    public const int UsualMostBytes = 64 * 1024;

    /// <summary>Takes the first PDU out of a buffer.</summary>
    /// <param name="buffer">What came in; moved past the PDU when one was taken or was faulty.</param>
    /// <param name="mostBytes">Longest PDU that is taken.</param>
    /// <param name="pdu">The PDU, which shares no memory with the buffer; null when more octets are needed.</param>
    /// <returns>False when more octets are needed.</returns>
    /// <exception cref="PduFaultException">Fatal when the length is below 16 or above
    /// <paramref name="mostBytes"/>: the buffer stays as it was. Not fatal when the body is malformed: the PDU is taken
    /// out.</exception>
    public static bool TryRead(ref ReadOnlySequence<byte> buffer, int mostBytes, out Pdu? pdu)
    {
        pdu = null;
        Span<byte> header = stackalloc byte[HeaderLength];
        if (buffer.Length < sizeof(uint)) return false;
        buffer.Slice(0, sizeof(uint)).CopyTo(header);
        var length = BinaryPrimitives.ReadUInt32BigEndian(header);
        if (length < HeaderLength || length > mostBytes)
        {
            throw new PduFaultException($"A length of {length} octets.")
            {
                IsFatal = true,
                Status = CommandStatus.InvalidCommandLength,
            };
        }

        if (buffer.Length < length) return false;
        buffer.Slice(0, HeaderLength).CopyTo(header);
        var body = buffer.Slice(HeaderLength, length - HeaderLength).ToArray();
        buffer = buffer.Slice(length);
        pdu = Read(header, body);
        return true;
    }

    private static Pdu Read(ReadOnlySpan<byte> header, ReadOnlyMemory<byte> body)
    {
        var command = (CommandId)BinaryPrimitives.ReadUInt32BigEndian(header[4..]);
        var status = (CommandStatus)BinaryPrimitives.ReadUInt32BigEndian(header[8..]);
        var sequence = BinaryPrimitives.ReadUInt32BigEndian(header[12..]);
        var fields = new FieldReader(command, sequence, body);
        return command switch
        {
            CommandId.BindReceiver => ReadBind(sequence, BindMode.Receiver, fields),
            CommandId.BindTransmitter => ReadBind(sequence, BindMode.Transmitter, fields),
            CommandId.BindTransceiver => ReadBind(sequence, BindMode.Transceiver, fields),
            CommandId.BindReceiverResp => ReadBindResp(sequence, status, BindMode.Receiver, fields),
            CommandId.BindTransmitterResp => ReadBindResp(sequence, status, BindMode.Transmitter, fields),
            CommandId.BindTransceiverResp => ReadBindResp(sequence, status, BindMode.Transceiver, fields),
            CommandId.Unbind => new Pdu.Unbind(sequence),
            CommandId.UnbindResp => new Pdu.UnbindResp(sequence, status),
            CommandId.EnquireLink => new Pdu.EnquireLink(sequence),
            CommandId.EnquireLinkResp => new Pdu.EnquireLinkResp(sequence, status),
            CommandId.SubmitSm => new Pdu.SubmitSm(sequence, ReadMessage(fields)),
            CommandId.SubmitSmResp => ReadSubmitSmResp(sequence, status, fields),
            CommandId.DeliverSm => new Pdu.DeliverSm(sequence, ReadMessage(fields)),
            CommandId.DeliverSmResp => new Pdu.DeliverSmResp(sequence, status),
            CommandId.GenericNack => new Pdu.GenericNack(sequence, status),
            _ => new Pdu.Unknown(sequence, status, (uint)command, body),
        };
    }

    private static Pdu.Bind ReadBind(uint sequence, BindMode mode, FieldReader fields) =>
        new(sequence, mode, SystemId: fields.Text(), Password: fields.Text())
        {
            SystemType = fields.Text(),
            InterfaceVersion = fields.Byte(),
            Range = fields.Address(),
        };

    private static Pdu.BindResp ReadBindResp(
        uint sequence, CommandStatus status, BindMode mode, FieldReader fields) =>
        status != CommandStatus.Ok
            ? new Pdu.BindResp(sequence, status, mode, null, Tlvs.None)
            : new Pdu.BindResp(sequence, status, mode, fields.IsAtTlvs ? null : fields.Text(), fields.Tlvs());

    private static Pdu.SubmitSmResp ReadSubmitSmResp(uint sequence, CommandStatus status, FieldReader fields) =>
        new(sequence, status, status != CommandStatus.Ok || fields.IsAtEnd ? null : fields.Text());

    // An object initializer runs in the order it is written, which is the order of the fields.
    private static MessageBody ReadMessage(FieldReader fields) => new()
    {
        ServiceType = fields.Text(),
        Source = fields.Address(),
        Destination = fields.Address(),
        EsmClass = fields.Byte(),
        ProtocolId = fields.Byte(),
        PriorityFlag = fields.Byte(),
        ScheduleDeliveryTime = fields.Text(),
        ValidityPeriod = fields.Text(),
        RegisteredDelivery = fields.Byte(),
        ReplaceIfPresent = fields.Byte(),
        DataCoding = fields.Byte(),
        DefaultMessageId = fields.Byte(),
        ShortMessage = fields.Octets(fields.Byte()),
        Tlvs = fields.Tlvs(),
    };
}
