using System.Buffers;
using System.Text;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>Octets derived by hand from the layouts of SMPP 3.4, sections 3.2 and 4.</summary>
public sealed class PduVectorTests
{
    private const string SubmitSm =
        "00000030 00000004 00000000 00000007" +
        "00 0500 4845415000 0101 39393931323334353600" + // service type, source, destination
        "00 00 00 00 00" + // esm_class, protocol_id, priority_flag, schedule, validity
        "01 00 00 00 02 4869";

    public static TheoryData<string, object> WholePdus => new()
    {
        { "00000010 00000015 00000000 00000001", new Pdu.EnquireLink(1) },
        { "00000010 80000015 00000000 00000001", new Pdu.EnquireLinkResp(1, CommandStatus.Ok) },
        { "00000010 00000006 00000000 7FFFFFFF", new Pdu.Unbind(Pdu.LastSequence) },
        { "00000010 80000006 00000000 00000002", new Pdu.UnbindResp(2, CommandStatus.Ok) },
        { "00000010 80000000 00000003 00000000", new Pdu.GenericNack(0, CommandStatus.InvalidCommandId) },
        {
            "00000023 00000009 00000000 00000001 6F666669636500 73656372657400 00 34 00 00 00",
            new Pdu.Bind(1, BindMode.Transceiver, "office", "secret")
        },
        {
            "0000001A 00000001 00000000 00000001 6100 6200 00 34 01 01 3900",
            new Pdu.Bind(1, BindMode.Receiver, "a", "b") { Range = new Address(1, 1, "9") }
        },
        { "00000014 80000004 00000000 00000003 61316200", new Pdu.SubmitSmResp(3, CommandStatus.Ok, "a1b") },
        { "00000010 80000004 00000058 00000003", new Pdu.SubmitSmResp(3, CommandStatus.Throttled, null) },
        { "00000011 80000005 00000000 00000004 00", new Pdu.DeliverSmResp(4, CommandStatus.Ok) },
        { "00000010 80000009 0000000E 00000001",
            new Pdu.BindResp(1, CommandStatus.InvalidPassword, BindMode.Transceiver, null, Tlvs.None) },
    };

    [Theory]
    [MemberData(nameof(WholePdus))]
    public void Pdu_LaidOutByHand_IsWrittenAndReadToTheOctet(string octets, object pdu)
    {
        Assert.Equal(Octets(octets), RandomPdus.Written((Pdu)pdu));
        Assert.Equal(pdu, Read(octets));
    }

    [Fact]
    public void SubmitSm_LaidOutByHand_IsWrittenToTheOctet()
    {
        var body = new MessageBody
        {
            Source = new Address(5, 0, "HEAP"),
            Destination = new Address(1, 1, "999123456"),
            RegisteredDelivery = 1,
            ShortMessage = "Hi"u8.ToArray(),
        };

        Assert.Equal(Octets(SubmitSm), RandomPdus.Written(new Pdu.SubmitSm(7, body)));
    }

    [Fact]
    public void DeliverSm_WithEveryTypedTlv_ReadsEach()
    {
        const string Fixed = "00 00 00 00 00 00 00 04 00 00 00 00 00 00 00 00 00";
        const string Tlvs =
            "001E 0003 613100  0427 0001 02  0423 0003 03 0013  0424 0002 4869  020C 0002 0102  020E 0001 03" +
            "020F 0001 02  0501 0001 12  0204 0002 FFFE  1383 0002 07 0B  1400 0001 99";
        var length = 16 + Octets(Fixed).Length + Octets(Tlvs).Length;

        var read = Assert.IsType<Pdu.DeliverSm>(Read($"{length:X8} 00000005 00000000 00000009" + Fixed + Tlvs));

        var tlvs = read.Body.Tlvs;
        Assert.Equal("a1", tlvs.ReceiptedMessageId);
        Assert.Equal(MessageState.Delivered, tlvs.MessageState);
        Assert.Equal(new NetworkError(3, 0x13), tlvs.NetworkError);
        Assert.Equal("Hi", Encoding.ASCII.GetString(read.Body.UserData.Span));
        Assert.Equal(((ushort?)0x0102, (byte?)3, (byte?)2), (tlvs.SarReference, tlvs.SarTotal, tlvs.SarPart));
        Assert.Equal(UssdServiceOp.UssrConfirm, tlvs.UssdServiceOp);
        Assert.Equal((ushort?)0xFFFE, tlvs.UserMessageReference);
        Assert.Equal(new ItsSessionInfo(7, 5, Ends: true), tlvs.ItsSessionInfo);
        Assert.Equal(new byte[] { 0x99 }, tlvs.All[^1].Value.ToArray());
        Assert.True(EsmClass.IsReceipt(read.Body.EsmClass));
    }

    [Theory]
    [InlineData("00000010 80000004 00000000 00000003")]
    [InlineData("00000010 80000005 00000000 00000003")]
    [InlineData("00000010 80000009 00000000 00000003")]
    [InlineData("00000014 80000004 00000008 00000003 61626364")]
    public void Response_WithoutItsBodyOrWithRubbishAfterAnError_IsRead(string octets) =>
        Assert.Equal(3u, Read(octets).Sequence);

    [Fact]
    public void BindResp_OfTlvsWithoutASystemId_KeepsTheTlvs()
    {
        var bound = Assert.IsType<Pdu.BindResp>(Read("00000015 80000009 00000000 00000001 0210 0001 34"));

        Assert.Null(bound.SystemId);
        Assert.Equal(Pdu.Bind.Version34, bound.Tlvs.InterfaceVersion);
    }

    [Fact]
    public void Unknown_AnyKind_KeepsItsNumberAndBody()
    {
        var unknown = Assert.IsType<Pdu.Unknown>(Read("00000012 00000103 00000000 00000005 ABCD"));

        Assert.Equal((0x103u, 5u, false), (unknown.Number, unknown.Sequence, unknown.IsResponse));
        Assert.Equal(new byte[] { 0xAB, 0xCD }, unknown.Octets.ToArray());
    }

    [Theory]
    [InlineData("0000000F")]
    [InlineData("00000000")]
    [InlineData("00010001")]
    [InlineData("FFFFFFFF 00000015")]
    public void TryRead_LengthOutOfBounds_IsFatalBeforeTheRestCame(string octets)
    {
        var buffer = new ReadOnlySequence<byte>(Octets(octets));

        var fault = Assert.Throws<PduFaultException>(
            () => PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out _));

        Assert.True(fault.IsFatal);
    }

    [Theory]
    [InlineData("00000012 80000004 00000000 00000009 6162", 0x80000004, 0x01)]
    [InlineData("00000013 00000009 00000000 00000009 610062", 0x09, 0x01)]
    [InlineData("00000021 00000005 00000000 00000009 0000000000000000000000000000000002", 0x05, 0x01)]
    [InlineData("00000023 00000005 00000000 00000009 0000000000000000000000000000000000 0424", 0x05, 0xC0)]
    [InlineData("00000026 00000005 00000000 00000009 0000000000000000000000000000000000 0424 0002 48", 0x05, 0xC0)]
    public void TryRead_MalformedBody_TakesThatPduAloneAndSaysWhatToAnswer(string octets, uint command, uint answer)
    {
        var buffer = new ReadOnlySequence<byte>(Octets(octets + "00000010 00000015 00000000 0000000A"));

        var fault = Assert.Throws<PduFaultException>(
            () => PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out _));
        Assert.True(PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var next));

        Assert.Equal((false, 9u), (fault.IsFatal, fault.Sequence));
        Assert.Equal((command, answer), ((uint)fault.CommandId, (uint)fault.Status));
        Assert.Equal(new Pdu.EnquireLink(10), next);
    }

    public static TheoryData<object> TooLong => new()
    {
        new Pdu.Bind(1, BindMode.Transceiver, new string('a', 16), ""),
        new Pdu.Bind(1, BindMode.Transceiver, "a", "123456789"),
        new Pdu.Bind(1, BindMode.Transceiver, "a\0b", ""),
        new Pdu.Bind(1, BindMode.Transceiver, "Ω", ""),
        new Pdu.SubmitSm(1, new MessageBody { ShortMessage = new byte[255] }),
        new Pdu.SubmitSm(1, new MessageBody { Tlvs = Tlvs.None.With(TlvTag.MessagePayload, new byte[65_536]) }),
    };

    [Theory]
    [MemberData(nameof(TooLong))]
    public void Write_FieldThatDoesNotFit_WritesNothing(object pdu)
    {
        var output = new ArrayBufferWriter<byte>();

        Assert.Throws<ArgumentException>(() => PduWriter.Write((Pdu)pdu, output));

        Assert.Equal(0, output.WrittenCount);
    }

    [Fact]
    public void ToString_PduWithSecrets_ShowsNone()
    {
        Assert.Equal("BindTransceiver 1 Ok", new Pdu.Bind(1, BindMode.Transceiver, "office", "secret").ToString());
        Assert.Equal("SubmitSm 7 Ok", Read(SubmitSm).ToString());
    }

    private static Pdu Read(string octets)
    {
        var buffer = new ReadOnlySequence<byte>(Octets(octets));
        Assert.True(PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var pdu));
        Assert.True(buffer.IsEmpty);
        return pdu!;
    }

    private static byte[] Octets(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));
}
