using HeapText.Carriers.Smpp;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp;

public sealed class ReceiptAndScreenTests : IDisposable
{
    private readonly ScriptedCentre _centre = new();

    public void Dispose() => _centre.Dispose();

    [Theory]
    [InlineData("DELIVRD", DeliveryState.Delivered)]
    [InlineData("UNDELIV", DeliveryState.Failed)]
    [InlineData("EXPIRED", DeliveryState.Expired)]
    [InlineData("REJECTD", DeliveryState.Rejected)]
    public async Task Deliver_Receipt_IsNoted(string written, DeliveryState state)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Receipt("c-1", written)));

        var noted = Assert.Single(line.Receiver.Noted);
        Assert.Equal(("lake", "c-1", state), (noted.Line, noted.Reference, noted.State));
    }

    [Fact]
    public async Task Deliver_NewsOnTheWay_IsAnsweredAndNotNoted()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Receipt("c-1", "ENROUTE")));

        Assert.Empty(line.Receiver.Noted);
        Assert.Empty(line.Receiver.Asked);
    }

    [Fact]
    public async Task Deliver_ReceiptBeforeTheAnswerAndTwice_IsNotedEachTimeUnderTheId()
    {
        var (line, centre) = await TestLine.Bound(_centre, options => options with
        {
            ReceiptIds = ReceiptIds.InDecimal,
        });
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Receipt("2748", "DELIVRD"), 1));
        await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, CommandStatus.Ok, "0ABC"));
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Receipt("0000002748", "DELIVRD"), 2));

        var reference = Assert.Single(Assert.IsType<SendOutcome.Taken>(await sending).References!);
        Assert.Equal([reference, reference], line.Receiver.Noted.Select(one => one.Reference));
    }

    [Fact]
    public async Task Deliver_ReceiptWhileTheStoreIsGone_ComesAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        line.Receiver.BeforeEffect = () => throw new StoreUnavailableException("gone");

        var status = await centre.Deliver(Receipt("c-1", "DELIVRD"));

        Assert.Equal(CommandStatus.ReceiverTemporaryError, status);
    }

    [Fact]
    public async Task Deliver_DialledSession_ShowsScreensUntilItEnds()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        line.Receiver.Show = step => step.Step == 1
            ? new Screen("1 My heap\n2 Help", true)
            : new Screen($"You chose {step.Input}.", false);

        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Entry("*41#", UssdServiceOp.PssrIndication, 0), 1));
        var first = await centre.TakeAs("c-1");
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(Entry("1", UssdServiceOp.UssrConfirm, 1), 2));
        var last = await centre.TakeAs("c-2");

        Assert.Equal(["", "1"], line.Receiver.Steps.Select(step => step.Input));
        Assert.Single(line.Receiver.Steps.Select(step => step.Session).Distinct());
        Assert.Equal(UssdServiceOp.UssrRequest, first.Tlvs.UssdServiceOp);
        Assert.Equal(UssdServiceOp.PssrResponse, last.Tlvs.UssdServiceOp);
        Assert.Equal(new ItsSessionInfo(7, 2, Ends: true), last.Tlvs.ItsSessionInfo);
        Assert.Equal("You chose 1.", TextCoding.Decode(last.ShortMessage.Span, Alphabet.Gsm7));
        Assert.Equal(Entry("", UssdServiceOp.UssrConfirm, 1).Source, last.Destination);
    }

    [Fact]
    public async Task Deliver_DialledAgain_IsAnotherSession()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        line.Receiver.Show = _ => new Screen("1 My heap", true);

        for (uint i = 1; i <= 2; i++)
        {
            await centre.Deliver(Entry("*41#", UssdServiceOp.PssrIndication, 0), i);
            await centre.TakeAs($"c-{i}");
        }

        Assert.Equal([1, 1], line.Receiver.Steps.Select(step => step.Step));
        Assert.Equal(2, line.Receiver.Steps.Select(step => step.Session).Distinct().Count());
    }

    [Fact]
    public async Task Deliver_SessionEndedByThePhone_IsAnsweredAndShowsNothing()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var body = Entry("", UssdServiceOp.UssrConfirm, 1);

        var status = await centre.Deliver(body with
        {
            Tlvs = Tlvs.None.With(TlvTag.UssdServiceOp, (byte)UssdServiceOp.UssrConfirm)
                .With(TlvTag.ItsSessionInfo, new ItsSessionInfo(7, 1, Ends: true).ToOctets()),
        });

        Assert.Equal(CommandStatus.Ok, status);
        Assert.Empty(line.Receiver.Steps);
    }

    private static MessageBody Receipt(string id, string state) => TestLine.Text(
        $"id:{id} sub:001 dlvrd:001 submit date:2603020600 done date:2603020601 stat:{state} err:000 text:Turn") with
    {
        EsmClass = 0x04,
    };

    private static MessageBody Entry(string text, UssdServiceOp operation, byte step) => TestLine.Text(text) with
    {
        ServiceType = "USSD",
        Destination = new Address(3, 0, "41"),
        Tlvs = Tlvs.None.With(TlvTag.UssdServiceOp, (byte)operation)
            .With(TlvTag.ItsSessionInfo, new ItsSessionInfo(7, step, Ends: false).ToOctets()),
    };
}
