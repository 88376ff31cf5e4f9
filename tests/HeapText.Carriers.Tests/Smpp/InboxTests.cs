using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp;

public sealed class InboxTests : IDisposable
{
    private readonly ScriptedCentre _centre = new();

    public void Dispose() => _centre.Dispose();

    [Fact]
    public async Task Deliver_Text_IsAnsweredOnlyOnceItHasItsEffect()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var gate = new TaskCompletionSource();
        line.Receiver.BeforeEffect = () => gate.Task;

        await centre.Write(new Pdu.DeliverSm(1, TestLine.Text("HEAP 41")), new Pdu.EnquireLink(2));
        Assert.IsType<Pdu.EnquireLinkResp>(await centre.Next());
        gate.SetResult();

        Assert.Equal(CommandStatus.Ok, (await centre.Read<Pdu.DeliverSmResp>()).Status);
        var heard = Assert.Single(line.Receiver.Heard);
        Assert.Equal(("lake", "+256700000001", "HEAP 41"), (heard.Line, heard.From.Value, heard.Text));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Deliver_NotTaken_ComesAgainUnderTheSameId(bool storeGone)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        line.Receiver.BeforeEffect = () =>
            throw (storeGone ? new StoreUnavailableException("gone") : new TurnFailedException());

        Assert.Equal(CommandStatus.ReceiverTemporaryError, await centre.Deliver(TestLine.Text("HEAP 41")));
        line.Receiver.BeforeEffect = () => Task.CompletedTask;
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(TestLine.Text("HEAP 41"), 2));

        Assert.Single(line.Receiver.Asked.Distinct());
    }

    [Fact]
    public async Task Deliver_SameTextAfterItsAnswer_IsAnotherMessage()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        for (uint i = 1; i <= 3; i++) Assert.Equal(CommandStatus.Ok, await centre.Deliver(TestLine.Text("1"), i));

        Assert.Equal(3, line.Receiver.Heard.Count);
    }

    [Fact]
    public async Task Deliver_AgainAfterTheLinkWasCutBeforeItsAnswer_HasItsEffectOnce()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var gate = new TaskCompletionSource();
        line.Receiver.AfterEffect = () => gate.Task;
        // Twice "1": each comes again, and each has its effect once.
        await centre.Write(new Pdu.DeliverSm(1, TestLine.Text("1")), new Pdu.DeliverSm(2, TestLine.Text("1")));
        await TestLine.Until(() => !line.Receiver.Heard.IsEmpty);
        centre.Cut();
        await TestLine.Until(() => line.Session is null);
        gate.SetResult();
        await TestLine.Until(() => line.Receiver.Heard.Count == 2);

        using var next = await line.BindAgain(_centre);
        for (uint i = 1; i <= 2; i++) Assert.Equal(CommandStatus.Ok, await next.Deliver(TestLine.Text("1"), i));

        Assert.Equal(2, line.Receiver.Heard.Count);
        Assert.Equal(4, line.Receiver.Asked.Count);
    }

    [Theory]
    [InlineData(false, 1)]
    [InlineData(true, 2)]
    public async Task Deliver_AgainOverANewLink_CountsByWhetherTheAnswerSurelyCame(bool isProven, int effects)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(TestLine.Text("1")));
        if (isProven)
        {
            // The centre answers what went after our answer: so it has it.
            var sending = line.Send("s-1");
            await centre.TakeAs("c-1");
            await sending;
        }

        centre.Cut();
        using var next = await line.BindAgain(_centre);
        Assert.Equal(CommandStatus.Ok, await next.Deliver(TestLine.Text("1")));

        Assert.Equal(effects, line.Receiver.Heard.Count);
    }

    [Fact]
    public async Task Deliver_AgainToTheNextProcess_HasTheSameIdForTenMinutes()
    {
        var ids = new List<string>();
        foreach (var minutes in new[] { 0, 9, 10 })
        {
            var (line, centre) = await TestLine.Bound(_centre);
            await using var _ = line;
            line.Time.Advance(TimeSpan.FromMinutes(minutes));
            await centre.Write(new Pdu.DeliverSm(1, TestLine.Text("1")));
            await TestLine.Until(() => !line.Receiver.Asked.IsEmpty);
            ids.Add(line.Receiver.Asked.Single());
            centre.Cut();
        }

        Assert.Equal(ids[0], ids[1]);
        Assert.NotEqual(ids[0], ids[2]);
    }

    [Theory]
    [InlineData(5, 0, "HEAPSHOP")] // a name
    [InlineData(3, 0, "4455")] // a short code
    [InlineData(1, 1, "999100000001")] // a practice number
    [InlineData(0, 0, "")]
    public async Task Deliver_SenderThatIsNoPhone_IsAnsweredAndDropped(byte ton, byte npi, string from)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var status = await centre.Deliver(TestLine.Text("HEAP 41") with { Source = new Address(ton, npi, from) });

        Assert.Equal(CommandStatus.Ok, status);
        Assert.Empty(line.Receiver.Asked);
    }

    [Fact]
    public async Task Deliver_PartsOutOfOrderWithRepeats_AreOneText()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var parts = LongText("We have cow dung, maize stalks ", "and green leaves of tithonia ", "but no ash");

        await centre.Write(
            new Pdu.DeliverSm(1, parts[2]), new Pdu.DeliverSm(2, parts[0]), new Pdu.DeliverSm(3, parts[2]),
            new Pdu.DeliverSm(4, parts[1]));
        var answers = new List<Pdu.DeliverSmResp>();
        while (answers.Count < 4) answers.Add(await centre.Read<Pdu.DeliverSmResp>());
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(parts[1], 5));

        Assert.All(answers, answer => Assert.Equal(CommandStatus.Ok, answer.Status));
        Assert.Equal(
            "We have cow dung, maize stalks and green leaves of tithonia but no ash",
            Assert.Single(line.Receiver.Heard).Text);
    }

    [Fact]
    public async Task Deliver_PartOfWhichTheRestNeverComes_IsHeldThenSentBackAndAtLastAskedAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre, options => options with
        {
            EnquireEvery = TimeSpan.FromHours(10),
        });
        await using var _ = line;

        await centre.Write(new Pdu.DeliverSm(1, LongText("We have cow dung, ", "maize stalks")[0]));
        var answer = Assert.IsType<Pdu.DeliverSmResp>(await line.Passing(centre.Next()));
        await TestLine.Until(() =>
        {
            line.Time.Advance(TimeSpan.FromSeconds(1));
            return !line.Receiver.Rung.IsEmpty;
        });

        Assert.Equal(CommandStatus.ReceiverTemporaryError, answer.Status);
        Assert.Empty(line.Receiver.Heard);
        Assert.Equal("+256700000001", line.Receiver.Rung.First().From.Value);
    }

    private static MessageBody[] LongText(params string[] pieces) => [.. pieces.Select((piece, i) =>
        TestLine.Text("") with
        {
            EsmClass = EsmClass.HasHeader,
            ShortMessage = (byte[])
            [
                5, 0, 3, 77, (byte)pieces.Length, (byte)(i + 1), .. TextCoding.Encode(piece, Alphabet.Gsm7),
            ],
        })];
}
