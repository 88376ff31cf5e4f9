using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp;

public sealed class SendTests : IDisposable
{
    private const string TwoParts =
        "Mix one basket of fresh green leaves, two baskets of dry stalks and half a basket of cow dung for each round. "
        + "Wet each layer until it feels like a wrung cloth, then start the next round.";

    private readonly ScriptedCentre _centre = new();

    public void Dispose() => _centre.Dispose();

    [Fact]
    public async Task Send_ShortText_IsTakenUnderTheCentresId()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var body = await centre.TakeAs("c-1");

        Assert.Equal(["c-1"], Assert.IsType<SendOutcome.Taken>(await sending).References);
        Assert.Equal(new Address(3, 0, "3344"), body.Source);
        Assert.Equal(new Address(1, 1, "256700000001"), body.Destination);
        Assert.Equal("000000020000000R", body.ValidityPeriod);
        Assert.Equal(1, body.RegisteredDelivery);
    }

    [Fact]
    public async Task Send_LongText_GoesAsPartsOfOneReferenceAndIsTakenUnderTheirIds()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-258", TwoParts);
        var parts = new[] { await centre.TakeAs("c-1"), await centre.TakeAs("c-2") };

        Assert.Equal(["c-1", "c-2"], Assert.IsType<SendOutcome.Taken>(await sending).References);
        // 258 is the farmer's running number: 2 in the eight bits of a header.
        Assert.Equal([5, 0, 3, 2, 2, 1], parts[0].ShortMessage[..6].ToArray());
        Assert.Equal([5, 0, 3, 2, 2, 2], parts[1].ShortMessage[..6].ToArray());
    }

    [Theory]
    [InlineData(Alphabet.Gsm7, 1)]
    [InlineData(Alphabet.Ascii, 2)]
    public async Task Segments_LetterTheLinesAlphabetLacks_AreThoseThatAreSent(Alphabet alphabet, int segments)
    {
        await using var line = new TestLine(_centre, options => options with { Alphabet = alphabet });

        Assert.Equal(segments, line.Segments("é" + new string('a', 99)));
    }

    [Fact]
    public async Task Send_WithoutConnection_IsBusy()
    {
        await using var line = new TestLine(_centre);

        Assert.IsType<SendOutcome.Busy>(await line.Send("s-1"));
    }

    [Fact]
    public async Task Send_AnswersInAnotherOrder_EachMessageGetsItsOwnId()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = Enumerable.Range(0, 5).Select(i => line.Send($"s-{i}", $"Text {i}")).ToList();
        var taken = new List<Pdu.SubmitSm>();
        while (taken.Count < 5) taken.Add(await centre.Read<Pdu.SubmitSm>());
        foreach (var submit in Enumerable.Reverse(taken))
            await centre.Write(new Pdu.SubmitSmResp(
                submit.Sequence, CommandStatus.Ok, TextCoding.Decode(submit.Body.ShortMessage.Span, Alphabet.Gsm7)));

        for (var i = 0; i < 5; i++)
            Assert.Equal([$"Text {i}"], Assert.IsType<SendOutcome.Taken>(await sending[i]).References);
    }

    [Fact]
    public async Task Send_WindowFull_WaitsForAnAnswer()
    {
        var (line, centre) = await TestLine.Bound(_centre, options => options with { Window = 2 });
        await using var _ = line;

        var sending = Enumerable.Range(0, 3).Select(i => line.Send($"s-{i}")).ToList();
        var first = await centre.Read<Pdu.SubmitSm>();
        await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.EnquireLink(9));
        // Whatever was to be written is written before this is answered.
        var next = await centre.Next();
        Assert.IsType<Pdu.EnquireLinkResp>(next);
        await centre.Write(new Pdu.SubmitSmResp(first.Sequence, CommandStatus.Ok, "c-1"));

        Assert.IsType<SendOutcome.Taken>(await await Task.WhenAny(sending));
    }

    [Theory]
    [InlineData(0x0B)] // ESME_RINVDSTADR
    [InlineData(0x51)] // ESME_RINVDSTNPI
    [InlineData(0x65)] // ESME_RX_P_APPN
    public async Task Send_RefusedForGoodWithoutBody_IsRefused(int status)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, (CommandStatus)status, null));

        Assert.IsType<SendOutcome.Refused>(await sending);
    }

    [Theory]
    [InlineData(0x08, true)] // ESME_RSYSERR
    [InlineData(0x0A, true)] // ESME_RINVSRCADR, which every message of the line has
    [InlineData(0x45, false)] // ESME_RSUBMITFAIL
    [InlineData(0x0400, false)] // a number of the centre's own
    public async Task Send_RefusedForNow_IsTriedAgain(int status, bool lineBusy)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, (CommandStatus)status, null));

        Assert.Equal(new SendOutcome.TryAgain(null, lineBusy), await sending);
    }

    [Fact]
    public async Task Send_Nacked_IsTriedAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.GenericNack(submit.Sequence, CommandStatus.InvalidCommandLength));

        Assert.IsType<SendOutcome.TryAgain>(await sending);
    }

    [Theory]
    [InlineData(0x58)] // ESME_RTHROTTLED
    [InlineData(0x14)] // ESME_RMSGQFUL
    public async Task Send_TooFast_IsBusyAndTheLineRestsLongerEachTime(int status)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var pauses = new List<double>();
        for (var i = 0; i < 4; i++)
        {
            var sending = line.Send("s-1");
            var submit = await centre.Read<Pdu.SubmitSm>();
            await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, (CommandStatus)status, null));
            pauses.Add(Assert.IsType<SendOutcome.Busy>(await sending).After!.Value.TotalSeconds);
            Assert.IsType<SendOutcome.Busy>(await line.Send("s-2"));
            line.Time.Advance(TimeSpan.FromSeconds(pauses[^1] + 0.001));
        }

        Assert.InRange(pauses[0], 0.2, 0.3);
        Assert.All(pauses.Zip(pauses.Skip(1)), two => Assert.InRange(two.Second / two.First, 1.3, 3.1));
        var after = line.Send("s-2");
        await centre.TakeAs("c-2");
        Assert.IsType<SendOutcome.Taken>(await after);
    }

    [Fact]
    public async Task Send_LinkCutAfterSubmit_IsTriedAgainWithTheSameMark()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var first = await centre.Read<Pdu.SubmitSm>();
        centre.Cut();
        Assert.Equal(new SendOutcome.TryAgain(null, LineBusy: true), await sending);

        using var next = await line.BindAgain(_centre);
        var again = line.Send("s-1");
        var second = await next.TakeAs("c-1");
        Assert.IsType<SendOutcome.Taken>(await again);
        Assert.NotNull(second.Tlvs.UserMessageReference);
        Assert.Equal(first.Body.Tlvs.UserMessageReference, second.Tlvs.UserMessageReference);
    }

    [Fact]
    public async Task Send_AnswerAfterItsTime_RepeatIsTakenWithoutSending()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        Assert.IsType<SendOutcome.TryAgain>(await line.Passing(sending));
        await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, CommandStatus.Ok, "c-1"));
        await centre.Write(new Pdu.EnquireLink(9));
        await centre.Read<Pdu.EnquireLinkResp>();

        Assert.Equal(["c-1"], Assert.IsType<SendOutcome.Taken>(await line.Send("s-1")).References);
    }

    [Fact]
    public async Task Send_WholeWindowOfAnswersOwed_ConnectsAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre, options => options with { Window = 1 });
        await using var _ = line;

        var sending = line.Send("s-1");
        await centre.Read<Pdu.SubmitSm>();
        Assert.IsType<SendOutcome.TryAgain>(await line.Passing(sending));

        using var next = await line.BindAgain(_centre);
        var again = line.Send("s-1");
        await next.TakeAs("c-1");
        Assert.IsType<SendOutcome.Taken>(await again);
    }

    [Fact]
    public async Task Send_OnePartThrottled_RepeatSendsThatPartOnly()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1", TwoParts);
        await centre.TakeAs("c-1");
        var second = await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.SubmitSmResp(second.Sequence, CommandStatus.Throttled, null));
        Assert.IsType<SendOutcome.Busy>(await sending);

        line.Time.Advance(TimeSpan.FromSeconds(1));
        var again = line.Send("s-1", TwoParts);
        var repeated = await centre.TakeAs("c-2");
        Assert.Equal(["c-1", "c-2"], Assert.IsType<SendOutcome.Taken>(await again).References);
        Assert.Equal(second.Body.ShortMessage.ToArray(), repeated.ShortMessage.ToArray());
    }
}
