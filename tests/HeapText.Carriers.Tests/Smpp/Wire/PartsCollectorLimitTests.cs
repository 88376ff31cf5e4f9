using CsCheck;
using HeapText.Carriers.Smpp.Wire;
using NodaTime;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class PartsCollectorLimitTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 2, 11, 6, 0);
    private static readonly string Text = new('a', 200);

    [Fact]
    public void Add_MoreTextsThanAllowed_DropsTheOldestAndAsksForItAgain()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostTexts = 2 }, Alphabet.Gsm7);
        for (var i = 0; i < 3; i++) sut.Add(LongMessages.Of(Text, 1, from: Sender(i))[0], i, At(i));

        Assert.Equal([0], sut.Sweep(At(3)).SendAgain);
        Assert.IsType<Collected<int>.Given>(sut.Add(LongMessages.Of(Text, 1, from: Sender(1))[1], 9, At(3)));
    }

    [Fact]
    public void Add_MoreTextsThanASenderMay_DropsThatSendersOldest()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostTextsOfSender = 2 }, Alphabet.Gsm7);
        sut.Add(LongMessages.Of(Text, 1, from: Sender(7))[0], 70, Now);
        for (var i = 0; i < 3; i++) sut.Add(LongMessages.Of(Text, (ushort)i)[0], i, At(i + 1));

        Assert.Equal([0], sut.Sweep(At(4)).SendAgain);
    }

    [Fact]
    public void Add_MorePartsThanAllowed_DropsTheOldestText()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostParts = 3 }, Alphabet.Gsm7);
        var parts = LongMessages.Of(new string('a', 500), 1);
        sut.Add(LongMessages.Of(Text, 1, from: Sender(7))[0], 70, Now);
        for (var i = 0; i < 3; i++) sut.Add(parts[i], i, At(i + 1));

        Assert.Equal([70], sut.Sweep(At(4)).SendAgain);
        Assert.IsType<Collected<int>.NoRoom>(sut.Add(parts[3], 3, At(4)));
    }

    [Fact]
    public void Add_PartsAfterAForgottenText_FindRoomAgain()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostParts = 3 }, Alphabet.Gsm7);
        var done = LongMessages.Of(Text, 1, from: Sender(7));
        sut.Add(done[0], 70, Now);
        sut.Settle(Assert.IsType<Collected<int>.Given>(sut.Add(done[1], 71, Now)).Text, isDurable: true, Now);
        var later = Now + new PartsLimits().Keep;
        sut.Sweep(later);

        var results = LongMessages.Of(new string('a', 400), 1).Select((part, i) => sut.Add(part, i, later)).ToList();

        Assert.IsType<Collected<int>.Given>(results[^1]);
    }

    [Fact]
    public void Add_NewTextWhenThereIsADoneOne_DropsTheDoneOneFirst()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostTexts = 2 }, Alphabet.Gsm7);
        sut.Add(LongMessages.Of(Text, 1, from: Sender(1))[0], 1, Now);
        var done = LongMessages.Of(Text, 1, from: Sender(2));
        sut.Add(done[0], 2, At(1));
        var given = Assert.IsType<Collected<int>.Given>(sut.Add(done[1], 3, At(1)));
        sut.Settle(given.Text, isDurable: true, At(1));

        sut.Add(LongMessages.Of(Text, 1, from: Sender(3))[0], 4, At(2));

        Assert.Empty(sut.Sweep(At(2)).SendAgain);
    }

    [Fact]
    public void Add_NewTextWhileAllAreGivenOut_FindsNoRoom()
    {
        var sut = new PartsCollector<int>(new PartsLimits { MostTexts = 1 }, Alphabet.Gsm7);
        foreach (var part in LongMessages.Of(Text, 1)) sut.Add(part, 1, Now);

        Assert.IsType<Collected<int>.NoRoom>(sut.Add(LongMessages.Of(Text, 2)[0], 2, Now));
    }

    /// <summary>A peer that sends again what was not answered well, over a process that may be killed: nothing is
    /// lost, nothing is answered well before it is durable, and every message is answered once.</summary>
    [Fact]
    public void Collector_ShuffledRepeatedPartsAndKills_LosesNoText() => Gen.Select(
        Gen.Int[1, 6], Gen.Enum<PartKind>(), Gen.Int[1, 8], Gen.Int[0, int.MaxValue - 1])
        .Sample((texts, kind, mostTexts, seed) =>
    {
        var peer = new ForgetfulPeer(texts, kind, mostTexts, new Random(seed));

        peer.Run();

        Assert.Empty(peer.Lost);
        Assert.Equal(0, peer.Unanswered);
    }, iter: 200);

    private static Address Sender(int i) => LongMessages.Farmer with { Value = $"9991000010{i}" };

    private static Instant At(int seconds) => Now + Duration.FromSeconds(seconds);
}
