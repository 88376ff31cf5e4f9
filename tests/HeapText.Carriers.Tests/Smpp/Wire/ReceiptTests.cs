using System.Text;
using CsCheck;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class ReceiptTests
{
    private const byte ReceiptClass = 0x04, IntermediateClass = 0x20;
    private const string Usual = "id:0012 sub:001 dlvrd:001 submit date:2602110630 done date:2602110631 "
        + "stat:DELIVRD err:000 text:Turn your heap today";

    private static readonly Gen<string> Scraps = Gen.OneOf([.. new[]
    {
        "id:", "stat:", "done date:", "err", ":", " ", "\n", "text:", "DELIVRD", "260211", "0631", "7", "submit",
    }.Select(Gen.Const)]);

    // The form of SMPP 3.4, appendix B, and what peers make of it. Expected: id, state, done, error.
    [Theory]
    [InlineData(Usual, "0012 Delivered 2026-02-11T06:31:00 ")]
    [InlineData("ID:a1b STAT:delivrd", "a1b Delivered  ")]
    [InlineData("stat:EXPIRED id:7 err:0f3", "7 Expired  0f3")]
    [InlineData("  id : 7   stat :  REJECTD   err:  ", "7 Rejected  ")]
    [InlineData("id:7 stat: err:005 done date:260211063159", "7 Unknown 2026-02-11T06:31:59 005")]
    [InlineData("id:7 donedate:2602110631 stat:UNDELIVERABLE", "7 Failed 2026-02-11T06:31:00 ")]
    [InlineData("id:7\r\nstat:DELETED\r\nerr:000", "7 Failed  ")]
    [InlineData("id:7 stat:ENROUTE", "7 OnTheWay  ")]
    [InlineData("id:7 stat:ACCEPTD", "7 OnTheWay  ")]
    [InlineData("id:7 stat:UNKNOWN", "7 Unknown  ")]
    [InlineData("id:7 stat:OK", "7 Unknown  ")]
    [InlineData("id:7", "7 Unknown  ")]
    [InlineData("id:7 done date:3502110631 stat:DELIVRD", "7 Delivered 2035-02-11T06:31:00 ")]
    [InlineData("id:7 done date:2602310631 stat:DELIVRD", "7 Delivered  ")]
    [InlineData("id:7 done date:26-02-11 stat:DELIVRD", "7 Delivered  ")]
    [InlineData("id:7 stat:UNDELIV text:your id:9 stat:DELIVRD", "7 Failed  ")]
    [InlineData("id:7 text:stat:DELIVRD", "7 Unknown  ")]
    [InlineData("text:Turn your heap id:7 stat:DELIVRD", "7 Delivered  ")]
    [InlineData("Id:7 Sub:001 Dlvrd:000 Submit  Date:1 Done  Date:2602110631 Stat:UNDELIV Err:9",
        "7 Failed 2026-02-11T06:31:00 9")]
    public void Read_Text_GivesIdStateTimeAndError(string text, string expected) =>
        Assert.Equal(expected, Shown(Read(text)));

    [Theory]
    [InlineData("")]
    [InlineData("id:")]
    [InlineData("stat:DELIVRD")]
    [InlineData("mid:7 stat:DELIVRD")]
    [InlineData("I turned the heap")]
    public void Read_TextWithoutAnId_IsNoReceipt(string text) => Assert.Null(Read(text));

    [Fact]
    public void Read_TextOfAReceiptFromAPhone_IsNoReceipt() => Assert.Null(Read(Usual, esmClass: 0));

    [Theory]
    [InlineData(1, "OnTheWay")]
    [InlineData(2, "Delivered")]
    [InlineData(3, "Expired")]
    [InlineData(4, "Failed")]
    [InlineData(5, "Failed")]
    [InlineData(6, "OnTheWay")]
    [InlineData(7, "Unknown")]
    [InlineData(8, "Rejected")]
    public void Read_StateByTlv_IsThatState(byte state, string expected)
    {
        var tlvs = Tlvs.None.With(TlvTag.ReceiptedMessageId, "7").With(TlvTag.MessageState, state);

        Assert.Equal($"7 {expected}  ", Shown(Read("", tlvs, esmClass: 0)));
    }

    [Fact]
    public void Read_TlvsThatDifferFromTheText_Win()
    {
        var tlvs = Tlvs.None.With(TlvTag.ReceiptedMessageId, "8").With(TlvTag.MessageState, (byte)3)
            .With(TlvTag.NetworkErrorCode, new byte[] { 3, 0, 27 });

        Assert.Equal("8 Expired 2026-02-11T06:31:00 27", Shown(Read(Usual, tlvs)));
    }

    [Fact]
    public void Read_TlvsThatSayNothing_LeaveTheText()
    {
        var tlvs = Tlvs.None.With(TlvTag.ReceiptedMessageId, "").With(TlvTag.MessageState, (byte)99)
            .With(TlvTag.NetworkErrorCode, new byte[] { 3 });

        Assert.Equal("0012 Delivered 2026-02-11T06:31:00 ", Shown(Read(Usual, tlvs)));
    }

    [Fact]
    public void Read_IntermediateNotice_IsNeverFinal() =>
        Assert.Equal(ReceiptState.OnTheWay, Read("id:7 stat:UNDELIV", esmClass: IntermediateClass)!.State);

    [Fact]
    public void Read_TextInThePayload_IsRead()
    {
        var body = new MessageBody
        {
            EsmClass = ReceiptClass,
            Tlvs = Tlvs.None.With(TlvTag.MessagePayload, Encoding.ASCII.GetBytes(Usual)),
        };

        Assert.Equal(ReceiptState.Delivered, Receipt.Read(body, new MessageIds(), Alphabet.Gsm7)!.State);
    }

    [Theory]
    [InlineData(0x00, "69643A615F3140")]
    [InlineData(0x04, "69643A615F3140")]
    [InlineData(0x08, "00690064003A0061005F00310040")]
    public void Read_TextInAnyCoding_KeepsTheIdsCharacters(byte coding, string octets)
    {
        var body = new MessageBody
        {
            EsmClass = ReceiptClass,
            DataCoding = coding,
            ShortMessage = Convert.FromHexString(octets),
        };

        Assert.Equal("a_1@", Receipt.Read(body, new MessageIds(), Alphabet.Gsm7)!.MessageId);
    }

    [Fact]
    public void ReadText_AnyText_NeverThrows() =>
        Gen.OneOf(Gen.String, Scraps.Array[0, 40].Select(string.Concat))
            .Sample(text => Assert.True(ReceiptText.Read(text).Id is null or { Length: > 0 }), iter: 5_000);

    // Response, then receipt, and how the line writes each.
    [Theory]
    [InlineData("1A2b", "Hex", "6699", "Decimal", true)]
    [InlineData("00001a2B", "Hex", "0000006699", "Decimal", true)]
    [InlineData("6699", "Decimal", "1A2B", "Hex", true)]
    [InlineData("00ab", "Hex", "AB", "Hex", true)]
    [InlineData("0012", "Decimal", "12", "Decimal", true)]
    [InlineData("0012", "AsIs", "12", "AsIs", false)]
    [InlineData("ab", "AsIs", "AB", "AsIs", false)]
    [InlineData(" ab ", "AsIs", "ab", "AsIs", true)]
    [InlineData("x-17", "Hex", "x-17", "Decimal", true)]
    [InlineData("FFFFFFFFFFFFFFFFFFFF", "Hex", "1208925819614629174706175", "Decimal", true)]
    [InlineData("12", "Hex", "12", "Decimal", false)]
    [InlineData("", "Hex", "", "Decimal", true)]
    public void MessageIds_ResponseAndReceipt_MeetInOneForm(
        string response, string responses, string receipt, string receipts, bool isSame)
    {
        var ids = new MessageIds(Enum.Parse<MessageIdForm>(responses), Enum.Parse<MessageIdForm>(receipts));

        Assert.Equal(isSame, ids.OfResponse(response) == ids.OfReceiptText(receipt));
    }

    [Fact]
    public void MessageIds_ReceiptTlv_HasTheFormOfResponsesUnlessSaid()
    {
        var ids = new MessageIds(MessageIdForm.Hex, MessageIdForm.Decimal);

        Assert.Equal(ids.OfResponse("1A"), ids.OfReceiptTlv("001a"));
        Assert.Equal(ids.OfResponse("1A"), (ids with { ReceiptTlvs = MessageIdForm.Decimal }).OfReceiptTlv("26"));
    }

    private static Receipt? Read(string text, Tlvs? tlvs = null, byte esmClass = ReceiptClass) => Receipt.Read(
        new MessageBody
        {
            EsmClass = esmClass,
            DataCoding = TextCoding.Latin1,
            ShortMessage = Encoding.Latin1.GetBytes(text),
            Tlvs = tlvs ?? Tlvs.None,
        },
        new MessageIds(), Alphabet.Gsm7);

    private static string Shown(Receipt? receipt) =>
        receipt is null ? "none" : $"{receipt.MessageId} {receipt.State} {receipt.DoneAt:s} {receipt.Error}";
}
