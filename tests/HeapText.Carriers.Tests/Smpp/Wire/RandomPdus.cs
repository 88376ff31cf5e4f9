using System.Buffers;
using CsCheck;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>PDUs of every kind with any contents the standard allows.</summary>
internal static class RandomPdus
{
    private static readonly Gen<uint> Sequences = Gen.UInt[1, Pdu.LastSequence];

    private static readonly Gen<CommandStatus> Statuses =
        Gen.OneOf(Gen.Const(CommandStatus.Ok), Gen.UInt[1, 0x5FF].Select(number => (CommandStatus)number));

    private static readonly Gen<BindMode> Modes = Gen.Enum<BindMode>();

    private static readonly Gen<byte[]> Octets = Gen.Byte.Array[0, 254];

    private static readonly Gen<Tlvs> SomeTlvs =
        Gen.Select(Gen.UShort, Gen.Byte.Array[0, 300], (tag, value) => new Tlv((TlvTag)tag, value))
            .Array[0, 4].Select(all => new Tlvs(all));

    private static readonly Gen<Address> Addresses =
        Gen.Select(Gen.Byte, Gen.Byte, Text(20), (ton, npi, value) => new Address(ton, npi, value));

    private static readonly Gen<MessageBody> Bodies = Gen.Select(
        Gen.Select(Text(5), Addresses, Addresses, Text(16), Text(16)),
        Gen.Byte.Array[8], Octets, SomeTlvs,
        (texts, bytes, octets, tlvs) => new MessageBody
        {
            ServiceType = texts.Item1,
            Source = texts.Item2,
            Destination = texts.Item3,
            ScheduleDeliveryTime = texts.Item4,
            ValidityPeriod = texts.Item5,
            EsmClass = bytes[0],
            ProtocolId = bytes[1],
            PriorityFlag = bytes[2],
            RegisteredDelivery = bytes[3],
            ReplaceIfPresent = bytes[4],
            DataCoding = bytes[5],
            DefaultMessageId = bytes[6],
            ShortMessage = octets,
            Tlvs = tlvs,
        });

    public static readonly Gen<Pdu> All = Gen.OneOf<Pdu>(
        Gen.Select(Sequences, Modes, Text(15), Text(8), Text(12), Addresses, (sequence, mode, id, word, type, range) =>
            (Pdu)new Pdu.Bind(sequence, mode, id, word) { SystemType = type, Range = range }),
        Gen.Select(Sequences, Statuses, Modes, Name(15), SomeTlvs, (sequence, status, mode, id, tlvs) =>
            status == CommandStatus.Ok
                ? (Pdu)new Pdu.BindResp(sequence, status, mode, id, tlvs)
                : new Pdu.BindResp(sequence, status, mode, null, Tlvs.None)),
        Sequences.Select(sequence => (Pdu)new Pdu.Unbind(sequence)),
        Gen.Select(Sequences, Statuses, (sequence, status) => (Pdu)new Pdu.UnbindResp(sequence, status)),
        Sequences.Select(sequence => (Pdu)new Pdu.EnquireLink(sequence)),
        Gen.Select(Sequences, Statuses, (sequence, status) => (Pdu)new Pdu.EnquireLinkResp(sequence, status)),
        Gen.Select(Sequences, Bodies, (sequence, body) => (Pdu)new Pdu.SubmitSm(sequence, body)),
        Gen.Select(Sequences, Statuses, Text(64), (sequence, status, id) =>
            (Pdu)new Pdu.SubmitSmResp(sequence, status, status == CommandStatus.Ok ? id : null)),
        Gen.Select(Sequences, Bodies, (sequence, body) => (Pdu)new Pdu.DeliverSm(sequence, body)),
        Gen.Select(Sequences, Statuses, (sequence, status) => (Pdu)new Pdu.DeliverSmResp(sequence, status)),
        Gen.Select(Sequences, Statuses, (sequence, status) => (Pdu)new Pdu.GenericNack(sequence, status)),
        Gen.Select(Sequences, Statuses, Octets, (sequence, status, octets) =>
            (Pdu)new Pdu.Unknown(sequence, status, 0x0103, octets)));

    public static byte[] Written(Pdu pdu)
    {
        var output = new ArrayBufferWriter<byte>();
        PduWriter.Write(pdu, output);
        return output.WrittenSpan.ToArray();
    }

    private static Gen<string> Text(int most) => Gen.String[Gen.Char['\u0001', '\u00ff'], 0, most];

    private static Gen<string> Name(int most) => Gen.String[Gen.Char[' ', '~'], 1, most];
}
