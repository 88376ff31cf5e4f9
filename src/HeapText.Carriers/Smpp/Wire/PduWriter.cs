using System.Buffers;
using System.Buffers.Binary;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Puts PDUs into a stream of octets.</summary>
/// <remarks>Layout and greatest lengths: SMPP 3.4, section 4, from memory.</remarks>
internal static class PduWriter
{
    private const int TlvHeader = 4;

    // No PDU's header and mandatory fields take more than 16 + 82 (a bind) or 16 + 348 (a message).
    private const int MostWithoutTlvs = 512;

    /// <summary>Writes one PDU.</summary>
    /// <exception cref="ArgumentException">A field is longer than the standard allows, or holds a character that cannot
    /// be sent; nothing is written.</exception>
    public static void Write(Pdu pdu, IBufferWriter<byte> output)
    {
        var room = output.GetSpan(RoomFor(pdu));
        var fields = new FieldWriter(room);
        fields.Number(0);
        fields.Number((uint)pdu.CommandId);
        fields.Number((uint)pdu.Status);
        fields.Number(pdu.Sequence);
        WriteBody(pdu, ref fields);
        BinaryPrimitives.WriteUInt32BigEndian(room, (uint)fields.Length);
        output.Advance(fields.Length);
    }

    private static int RoomFor(Pdu pdu) => MostWithoutTlvs + pdu switch
    {
        Pdu.SubmitSm submit => RoomFor(submit.Body.Tlvs),
        Pdu.DeliverSm deliver => RoomFor(deliver.Body.Tlvs),
        Pdu.BindResp bound => RoomFor(bound.Tlvs),
        Pdu.Unknown unknown => unknown.Octets.Length,
        _ => 0,
    };

    private static int RoomFor(Tlvs tlvs)
    {
        var room = 0;
        foreach (var one in tlvs.All)
        {
            if (one.Value.Length > ushort.MaxValue)
                throw new ArgumentException($"{one.Tag} is too long.", nameof(tlvs));
            room += TlvHeader + one.Value.Length;
        }

        return room;
    }

    private static void WriteBody(Pdu pdu, ref FieldWriter fields)
    {
        switch (pdu)
        {
            case Pdu.Bind bind:
                WriteBind(bind, ref fields);
                break;
            case Pdu.BindResp { Status: CommandStatus.Ok } bound:
                fields.Text(bound.SystemId ?? "", 15, "system_id");
                fields.Tlvs(bound.Tlvs);
                break;
            case Pdu.SubmitSm submit:
                WriteMessage(submit.Body, ref fields);
                break;
            case Pdu.DeliverSm deliver:
                WriteMessage(deliver.Body, ref fields);
                break;
            case Pdu.SubmitSmResp { Status: CommandStatus.Ok } submitted:
                fields.Text(submitted.MessageId ?? "", 64, "message_id");
                break;
            case Pdu.DeliverSmResp:
                fields.Text("", 0, "message_id");
                break;
            case Pdu.Unknown unknown:
                fields.Octets(unknown.Octets.Span);
                break;
        }
    }

    private static void WriteBind(Pdu.Bind bind, ref FieldWriter fields)
    {
        fields.Text(bind.SystemId, 15, "system_id");
        fields.Text(bind.Password, 8, "password");
        fields.Text(bind.SystemType, 12, "system_type");
        fields.Byte(bind.InterfaceVersion);
        fields.Address(bind.Range, 40, "address_range");
    }

    private static void WriteMessage(MessageBody body, ref FieldWriter fields)
    {
        if (body.ShortMessage.Length > MessageBody.MostShortMessage)
            throw new ArgumentException("short_message has more than 254 octets.", nameof(body));
        fields.Text(body.ServiceType, 5, "service_type");
        fields.Address(body.Source, 20, "source_addr");
        fields.Address(body.Destination, 20, "destination_addr");
        fields.Byte(body.EsmClass);
        fields.Byte(body.ProtocolId);
        fields.Byte(body.PriorityFlag);
        fields.Text(body.ScheduleDeliveryTime, 16, "schedule_delivery_time");
        fields.Text(body.ValidityPeriod, 16, "validity_period");
        fields.Byte(body.RegisteredDelivery);
        fields.Byte(body.ReplaceIfPresent);
        fields.Byte(body.DataCoding);
        fields.Byte(body.DefaultMessageId);
        fields.Byte((byte)body.ShortMessage.Length);
        fields.Octets(body.ShortMessage.Span);
        fields.Tlvs(body.Tlvs);
    }
}
