using System.Buffers;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp;

public sealed class SessionTests : IDisposable
{
    private readonly ScriptedCentre _centre = new();

    public void Dispose() => _centre.Dispose();

    [Fact]
    public async Task Bind_SaysWhoWeAre()
    {
        await using var line = new TestLine(_centre, options => options with { SystemType = "sms" });

        await line.Start();
        using var centre = await _centre.Accept();
        var bind = await centre.Read<Pdu.Bind>();

        Assert.Equal(BindMode.Transceiver, bind.Mode);
        Assert.Equal(("heap", "secret", "sms"), (bind.SystemId, bind.Password, bind.SystemType));
        Assert.Null(line.Session);
    }

    [Fact]
    public async Task Bind_Refused_TriesAgainLater()
    {
        await using var line = new TestLine(_centre);
        await line.Start();

        using var centre = await _centre.Accept();
        var bind = await centre.Read<Pdu.Bind>();
        await centre.Write(new Pdu.BindResp(
            bind.Sequence, CommandStatus.InvalidPassword, bind.Mode, null, Tlvs.None));
        Assert.Null(await centre.Next());

        using var next = await line.BindAgain(_centre);
        Assert.NotNull(line.Session);
    }

    [Fact]
    public async Task Read_OctetsOneByOne_AreUnderstood()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var octets = new ArrayBufferWriter<byte>();
        PduWriter.Write(new Pdu.EnquireLink(5), octets);
        PduWriter.Write(new Pdu.DeliverSm(6, TestLine.Text("HEAP 41")), octets);

        foreach (var octet in octets.WrittenSpan.ToArray()) await centre.WriteOctets(new[] { octet });

        Assert.Equal(5u, (await centre.Read<Pdu.EnquireLinkResp>()).Sequence);
        Assert.Equal(6u, (await centre.Read<Pdu.DeliverSmResp>()).Sequence);
        Assert.Equal("HEAP 41", Assert.Single(line.Receiver.Heard).Text);
    }

    [Fact]
    public async Task Enquire_EveryInterval_AnsweredLinkIsKept()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        for (var i = 0; i < 3; i++)
        {
            var enquiry = (Pdu.EnquireLink?)await line.Passing(centre.Next());
            await centre.Write(new Pdu.EnquireLinkResp(enquiry!.Sequence, CommandStatus.Ok));
        }

        Assert.True(line.Session!.IsOpen);
    }

    [Fact]
    public async Task Enquire_Unanswered_ConnectsAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        Assert.IsType<Pdu.EnquireLink>(await line.Passing(centre.Next()));
        Assert.Null(await line.Passing(centre.Next()));

        using var next = await line.BindAgain(_centre);
    }

    [Fact]
    public async Task Read_FaultyBodies_AreAnsweredAndTheNextIsRead()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        // A deliver_sm whose service_type does not end; then a command of no kind.
        byte[] halfDelivery = [0, 0, 0, 18, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 7, 65, 66];
        byte[] noKind = [0, 0, 0, 16, 0, 0, 7, 7, 0, 0, 0, 0, 0, 0, 0, 8];

        await centre.WriteOctets(halfDelivery);
        await centre.WriteOctets(noKind);

        var refused = await centre.Read<Pdu.DeliverSmResp>();
        Assert.Equal((7u, CommandStatus.InvalidMessageLength), (refused.Sequence, refused.Status));
        var nack = await centre.Read<Pdu.GenericNack>();
        Assert.Equal((8u, CommandStatus.InvalidCommandId), (nack.Sequence, nack.Status));
        Assert.Equal(CommandStatus.Ok, await centre.Deliver(TestLine.Text("HEAP 41")));
    }

    [Theory]
    [InlineData(15)]
    [InlineData(0x7FFFFFFF)]
    public async Task Read_LengthOfNoPdu_IsNackedAndTheLinkBegunAnew(int length)
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        byte[] octets = [(byte)(length >> 24), (byte)(length >> 16 & 0xFF), (byte)(length >> 8 & 0xFF),
            (byte)(length & 0xFF), 0, 0, 0, 4];

        await centre.WriteOctets(octets);

        var nack = await centre.Read<Pdu.GenericNack>();
        Assert.Equal((0u, CommandStatus.InvalidCommandLength), (nack.Sequence, nack.Status));
        Assert.Null(await centre.Next());
        using var next = await line.BindAgain(_centre);
    }

    [Fact]
    public async Task Read_RandomOctets_LineComesBackEachTime()
    {
        var soon = TimeSpan.FromSeconds(0.1);
        var (line, centre) = await TestLine.Bound(
            _centre, options => options with { ReconnectFirst = soon, ReconnectLongest = soon });
        await using var _ = line;
        var random = new Random(20260302);

        for (var round = 0; round < 40; round++)
        {
            var octets = new byte[random.Next(1, 4000)];
            random.NextBytes(octets);
            // Every other time in frames that fit, so that what is inside is read too.
            for (var at = 0; round % 2 == 0 && at + 16 <= octets.Length;)
            {
                var length = Math.Min(random.Next(16, 200), octets.Length - at);
                (octets[at], octets[at + 1], octets[at + 2], octets[at + 3]) = (0, 0, 0, (byte)length);
                (octets[at + 4], octets[at + 5], octets[at + 6]) = ((byte)(random.Next(2) * 128), 0, 0);
                octets[at + 7] = (byte)random.Next(0x16);
                at += length;
            }

            await centre.WriteOctets(octets);
            centre.Cut();
            centre = await line.BindAgain(_centre);
        }

        var sending = line.Send("s-1");
        await centre.TakeAs("c-1");
        Assert.IsType<SendOutcome.Taken>(await sending);
    }

    [Fact]
    public async Task Unbind_ByTheCentre_IsAnsweredAndTheLineBindsAgain()
    {
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;

        var sending = line.Send("s-1");
        var submit = await centre.Read<Pdu.SubmitSm>();
        await centre.Write(new Pdu.Unbind(3));
        Assert.Equal(3u, (await centre.Read<Pdu.UnbindResp>()).Sequence);
        await centre.Write(new Pdu.SubmitSmResp(submit.Sequence, CommandStatus.Ok, "c-1"));

        Assert.IsType<SendOutcome.Taken>(await sending);
        using var next = await line.BindAgain(_centre);
    }

    [Fact]
    public async Task Stop_TakesLeave()
    {
        var line = new TestLine(_centre);
        var centre = await line.Bind(_centre);

        var stopping = line.Stop();
        var unbind = await centre.Read<Pdu.Unbind>();
        await centre.Write(new Pdu.UnbindResp(unbind.Sequence, CommandStatus.Ok));

        await stopping;
        Assert.Null(await centre.Next());
        await line.DisposeAsync();
    }

    [Fact]
    public async Task Deliver_HandlerStandsStill_ReaderGoesOnAndWhatIsTooMuchComesAgain()
    {
        const int flood = 600;
        var (line, centre) = await TestLine.Bound(_centre);
        await using var _ = line;
        var gate = new TaskCompletionSource();
        line.Receiver.BeforeEffect = () => gate.Task;

        for (uint i = 1; i <= flood; i++)
            await centre.Write(new Pdu.DeliverSm(i, TestLine.Text($"{i}", $"2567000{i % 97:00000}")));
        await centre.Write(new Pdu.EnquireLink(flood + 1));
        var turnedAway = 0;
        while (await centre.Next() is Pdu.DeliverSmResp { Status: CommandStatus.ReceiverTemporaryError }) turnedAway++;
        gate.SetResult();
        for (var i = turnedAway; i < flood; i++)
            Assert.Equal(CommandStatus.Ok, (await centre.Read<Pdu.DeliverSmResp>()).Status);

        Assert.InRange(turnedAway, 1, flood - 16);
        Assert.Equal(flood - turnedAway, line.Receiver.Heard.Count);
        foreach (var phone in line.Receiver.Heard.GroupBy(one => one.From))
        {
            var numbers = phone.Select(one => int.Parse(one.Text, null)).ToList();
            Assert.Equal(numbers.Order(), numbers);
        }
    }
}
