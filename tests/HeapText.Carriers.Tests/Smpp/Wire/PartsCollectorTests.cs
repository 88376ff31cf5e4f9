using System.Text;
using HeapText.Carriers.Smpp.Wire;
using NodaTime;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class PartsCollectorTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 2, 11, 6, 0);
    private static readonly PartsLimits Usual = new();
    private static readonly string Long = new string('a', 153) + new string('b', 153) + "c";

    private readonly PartsCollector<int> _sut = new(Usual, Alphabet.Gsm7);

    [Fact]
    public void Add_TextOfOneMessage_IsGivenAtOnce()
    {
        var given = Given(_sut.Add(LongMessages.Of("HEAP", 1)[0], 7, Now));

        Assert.Equal(("HEAP", true, null), (given.Text, given.IsComplete, given.Part));
        Assert.Equal(LongMessages.Farmer, given.From);
        Assert.Equal([7], _sut.Settle(given, isDurable: true, Now));
    }

    [Theory]
    [InlineData(0, 1, 2)]
    [InlineData(2, 1, 0)]
    [InlineData(1, 2, 0)]
    public void Add_PartsInAnyOrder_AreHeldUntilTheLastAndThenAnsweredTogether(params int[] order)
    {
        var parts = LongMessages.Of(Long, 1);

        var results = order.Select(i => _sut.Add(parts[i], i, Now)).ToList();

        Assert.All(results[..2], one => Assert.IsType<Collected<int>.Held>(one));
        var given = Given(results[2]);
        Assert.Equal((Long, true), (given.Text, given.IsComplete));
        Assert.Equal([0, 1, 2], _sut.Settle(given, isDurable: true, Now).Order());
    }

    [Fact]
    public void Add_SamePartAgain_IsAnsweredWithTheOthersAndAddsNoWords()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Add(parts[0], 0, Now);
        _sut.Add(parts[0], 10, Now);
        _sut.Add(parts[1], 1, Now);
        var given = Given(_sut.Add(parts[2], 2, Now));
        Assert.IsType<Collected<int>.Held>(_sut.Add(parts[2], 12, Now));

        Assert.Equal(Long, given.Text);
        Assert.Equal([0, 1, 2, 10, 12], _sut.Settle(given, isDurable: true, Now).Order());
    }

    [Fact]
    public void Add_PartOfADurableText_IsKnown()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Settle(AddAll(parts), isDurable: true, Now);

        Assert.All(parts, part => Assert.IsType<Collected<int>.Known>(_sut.Add(part, 9, Now + Usual.Hold)));
    }

    [Fact]
    public void Add_SameReferenceFromOtherSenderOrKindOrTotal_IsAnotherText()
    {
        var other = LongMessages.Farmer with { Value = "99910000002" };
        var texts = new[]
        {
            LongMessages.Of(Long, 1), LongMessages.Of(Long, 1, from: other), LongMessages.Of(Long, 1, PartKind.Sar),
            LongMessages.Of(Long, 1, PartKind.LongReference), LongMessages.Of(new string('a', 200), 1),
        };

        // One part of each in turn, so that they are interleaved.
        var results = Enumerable.Range(0, 3)
            .SelectMany(i => texts.Where(text => i < text.Count).Select(text => _sut.Add(text[i], i, Now))).ToList();

        Assert.Equal(5, results.Count(one => one is Collected<int>.Given));
    }

    [Fact]
    public void Add_PairCutInTwo_IsOneCharacter()
    {
        var corn = Encoding.BigEndianUnicode.GetBytes("\U0001F33D");
        _sut.Add(LongMessages.Part(1, 2, 1, corn[..2], TextCoding.Ucs2), 1, Now);

        var given = Given(_sut.Add(LongMessages.Part(1, 2, 2, corn[2..], TextCoding.Ucs2), 2, Now));

        Assert.Equal("\U0001F33D", given.Text);
    }

    [Fact]
    public void Add_EscapeCutInTwo_IsOneCharacter()
    {
        _sut.Add(LongMessages.Part(1, 2, 1, [0x35, 0x1B]), 1, Now);

        Assert.Equal("5€", Given(_sut.Add(LongMessages.Part(1, 2, 2, [0x65]), 2, Now)).Text);
    }

    [Fact]
    public void Add_PartsOfTwoCodings_AreReadEachInItsOwn()
    {
        _sut.Add(LongMessages.Part(1, 2, 1, [0x00]), 1, Now);

        var given = Given(_sut.Add(LongMessages.Part(1, 2, 2, [0x1E, 0xCD], TextCoding.Ucs2), 2, Now));

        Assert.Equal("@ọ", given.Text);
    }

    [Fact]
    public void Sweep_PartHeldTooLong_IsAskedForAgainAndStillCounts()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Add(parts[0], 0, Now);
        _sut.Add(parts[1], 1, Now + Usual.Hold);

        Assert.Empty(_sut.Sweep(Now + Usual.Hold - Duration.Epsilon).SendAgain);
        Assert.Equal([0], _sut.Sweep(Now + Usual.Hold).SendAgain);
        Assert.Empty(_sut.Sweep(Now + Usual.Hold).SendAgain);
        var given = Given(_sut.Add(parts[2], 2, Now + Usual.Hold));
        Assert.Equal([1, 2], _sut.Settle(given, isDurable: true, Now + Usual.Hold).Order());
        Assert.IsType<Collected<int>.Known>(_sut.Add(parts[0], 10, Now + Usual.Hold));
    }

    [Fact]
    public void Sweep_PartsThatNeverCome_GivesOutWhatIsThereAndSaysSo()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Add(parts[1], 1, Now);

        Assert.Empty(_sut.Sweep(Now + Usual.Keep - Duration.Epsilon).Texts);
        var given = Assert.Single(_sut.Sweep(Now + Usual.Keep).Texts);

        Assert.Equal(("…" + new string('b', 153) + "…", false), (given.Text, given.IsComplete));
        Assert.Equal(new PartOf(PartKind.ShortReference, 1, 3, 2), given.Part);
        Assert.Empty(_sut.Sweep(Now + Usual.Keep).Texts);
    }

    [Fact]
    public void Add_MissingPartAfterTheIncompleteTextIsDurable_GivesTheWhole()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Add(parts[0], 0, Now);
        _sut.Add(parts[1], 1, Now);
        var later = Now + Usual.Keep;
        _sut.Settle(Assert.Single(_sut.Sweep(later).Texts), isDurable: true, later);

        var given = Given(_sut.Add(parts[2], 2, later));

        Assert.Equal((Long, true), (given.Text, given.IsComplete));
        Assert.Equal([2], _sut.Settle(given, isDurable: true, later));
    }

    [Fact]
    public void Settle_PartCameWhileTheIncompleteTextWasKept_GivesTheWholeAtTheNextSweep()
    {
        var parts = LongMessages.Of(new string('a', 200), 1);
        _sut.Add(parts[0], 0, Now);
        var later = Now + Usual.Keep;
        var incomplete = Assert.Single(_sut.Sweep(later).Texts);
        Assert.IsType<Collected<int>.Held>(_sut.Add(parts[1], 1, later));

        Assert.Equal([0], _sut.Settle(incomplete, isDurable: true, later));
        var whole = Assert.Single(_sut.Sweep(later).Texts);

        Assert.True(whole.IsComplete);
        Assert.Equal([1], _sut.Settle(whole, isDurable: true, later));
    }

    [Fact]
    public void Settle_TextThatCouldNotBeKept_IsGivenOutAgain()
    {
        var parts = LongMessages.Of(Long, 1);

        Assert.Equal([0, 1, 2], _sut.Settle(AddAll(parts), isDurable: false, Now).Order());

        var byPart = Given(_sut.Add(parts[1], 11, Now));
        Assert.Equal([11], _sut.Settle(byPart, isDurable: false, Now));
        var bySweep = Assert.Single(_sut.Sweep(Now).Texts);
        Assert.Equal((Long, true), (bySweep.Text, bySweep.IsComplete));
    }

    [Fact]
    public void Add_OtherWordsUnderTheSameReference_IsANewTextAndTheOldIsGivenOut()
    {
        var (old, newer) = (LongMessages.Of(Long, 1), LongMessages.Of(Long.Replace('a', 'd'), 1));
        _sut.Add(old[0], 0, Now);

        foreach (var part in newer.Take(2)) Assert.IsType<Collected<int>.Held>(_sut.Add(part, 1, Now));
        Assert.Equal(Long.Replace('a', 'd'), Given(_sut.Add(newer[2], 2, Now)).Text);

        var left = Assert.Single(_sut.Sweep(Now).Texts);
        Assert.Equal((new string('a', 153) + "…", false), (left.Text, left.IsComplete));
        Assert.Equal([0], _sut.Settle(left, isDurable: true, Now));
        Assert.Empty(_sut.Sweep(Now).Texts);
    }

    [Fact]
    public void Add_OtherWordsUnderTheReferenceOfADurableText_IsANewText()
    {
        _sut.Settle(AddAll(LongMessages.Of(Long, 1)), isDurable: true, Now);

        Assert.Equal(Long.Replace('a', 'd').Replace('b', 'e').Replace('c', 'f'),
            AddAll(LongMessages.Of(Long.Replace('a', 'd').Replace('b', 'e').Replace('c', 'f'), 1)).Text);
    }

    [Fact]
    public void Sweep_DurableTextPastItsTime_IsForgotten()
    {
        var parts = LongMessages.Of(Long, 1);
        _sut.Settle(AddAll(parts), isDurable: true, Now);

        Assert.Empty(_sut.Sweep(Now + Usual.Keep).Texts);

        Assert.IsType<Collected<int>.Held>(_sut.Add(parts[0], 9, Now + Usual.Keep));
    }

    [Fact]
    public void Sweep_TextThatWasLongInComing_IsKnownFromWhenItWasDurable()
    {
        var parts = LongMessages.Of(Long, 1);
        var late = Now + Usual.Keep - Duration.Epsilon;
        _sut.Settle(AddAll(parts), isDurable: true, late);

        _sut.Sweep(Now + Usual.Keep);

        Assert.IsType<Collected<int>.Known>(_sut.Add(parts[0], 9, Now + Usual.Keep));
    }

    private GivenText<int> AddAll(IReadOnlyList<MessageBody> parts) =>
        Given(parts.Select((part, i) => _sut.Add(part, i, Now)).Last());

    private static GivenText<int> Given(Collected<int> result) => Assert.IsType<Collected<int>.Given>(result).Text;
}
