using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>Note and Sent.</summary>
public abstract partial class StoreContract
{
    [Fact]
    public async Task Sent_MessageSettled_IsLoggedWithoutWordOfHowItEnded()
    {
        await Committed(Turn(1, 0, Message("s1-1", Priority.Reminder)));
        Clock.Advance(TimeSpan.FromSeconds(90));

        await Settle(await TakeOne(), new Settlement.Sent(["ref"]));

        Assert.Equal(
            new SentMessage("s1-1", Line, Priority.Reminder, 1, Noon + Duration.FromSeconds(90), 1, 0, null, null),
            Assert.Single(await Sent(1)));
        Assert.Empty(await Sent(2));
    }

    [Fact]
    public async Task Sent_ManySettled_KeepsTheNewestNewestFirst()
    {
        for (var n = 1; n <= 12; n++) await SettleNext(n, [$"ref {n}"], TimeSpan.FromSeconds(1));

        Assert.Equal(
            Enumerable.Range(5, 8).Reverse().Select(n => $"s1-{n}"), (await Sent(1)).Select(sent => sent.Id));
    }

    [Fact]
    public async Task Sent_SeveralInOneSecond_NewestFirst()
    {
        for (var n = 8; n <= 12; n++) await SettleNext(n, [], TimeSpan.Zero);

        Assert.Equal(["s1-12", "s1-11", "s1-10", "s1-9", "s1-8"], (await Sent(1)).Select(sent => sent.Id));
    }

    [Fact]
    public async Task Sent_OlderThanTwoWeeks_IsGone()
    {
        await SettleNext(1, [], TimeSpan.FromDays(10));
        await SettleNext(2, [], TimeSpan.FromDays(3));
        Assert.Equal(2, (await Sent(1)).Count);

        Clock.Advance(TimeSpan.FromDays(2));

        Assert.Equal("s1-2", Assert.Single(await Sent(1)).Id);
        await SettleNext(3, [], TimeSpan.Zero);
        Assert.Equal(["s1-3", "s1-2"], (await Sent(1)).Select(sent => sent.Id));
    }

    [Fact]
    public async Task Sent_OverAnotherLine_NamesTheLineThatSentIt()
    {
        await Committed(Turn(1, 0, Message("s1-1")));

        await Settle(await TakeOne(), new Settlement.Sent(["ref"], Over: "backup"));

        Assert.Equal("backup", Assert.Single(await Sent(1)).Line);
        Assert.Equal(NoteOutcome.Early, await Note("ref", DeliveryState.Delivered));
        Assert.Equal(NoteOutcome.Noted, await Note("ref", DeliveryState.Delivered, line: "backup"));
        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Sent(1)).State);
    }

    [Theory]
    [InlineData(DeliveryState.Delivered, 1)]
    [InlineData(DeliveryState.Failed, 0)]
    [InlineData(DeliveryState.Expired, 0)]
    [InlineData(DeliveryState.Rejected, 0)]
    public async Task Note_OfAMessageSent_ShowsHowItEnded(DeliveryState state, int delivered)
    {
        await SettleNext(1, ["ref"]);

        Assert.Equal(NoteOutcome.Noted, await Note("ref", state, Noon + Minute));

        var sent = Assert.Single(await Sent(1));
        Assert.Equal((state, Noon + Minute, delivered), (sent.State, sent.StateAt, sent.PartsDelivered));
    }

    [Fact]
    public async Task Note_GatewayGaveNoReference_GoesByOurId()
    {
        await SettleNext(1, []);

        Assert.Equal(NoteOutcome.Noted, await Note("s1-1", DeliveryState.Delivered));

        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Sent(1)).State);
    }

    [Fact]
    public async Task Note_SameReceiptAgain_ChangesNothing()
    {
        await SettleNext(1, ["a", "b"]);

        Assert.Equal(NoteOutcome.Noted, await Note("a", DeliveryState.Delivered));
        Assert.Equal(NoteOutcome.Unchanged, await Note("a", DeliveryState.Delivered));

        var sent = Assert.Single(await Sent(1));
        Assert.Equal((2, 1, null), (sent.Parts, sent.PartsDelivered, sent.State));
    }

    [Fact]
    public async Task Note_AllPartsDelivered_IsDelivered()
    {
        await SettleNext(1, ["a", "b", "c"]);

        foreach (var part in new[] { "c", "a", "b" }) await Note(part, DeliveryState.Delivered, Noon + Minute);

        var sent = Assert.Single(await Sent(1));
        Assert.Equal((DeliveryState.Delivered, 3, Noon + Minute), (sent.State, sent.PartsDelivered, sent.StateAt));
    }

    [Fact]
    public async Task Note_OnePartFailed_IsFailedUntilAllAreDeliveredAfterAll()
    {
        await SettleNext(1, ["a", "b"]);
        await Note("a", DeliveryState.Failed, Noon + Minute);
        await Note("b", DeliveryState.Delivered);
        await Note("a", DeliveryState.Expired, Noon + Minute * 2);
        var failed = Assert.Single(await Sent(1));

        await Note("a", DeliveryState.Delivered, Noon + Minute * 3);

        Assert.Equal((DeliveryState.Failed, Noon + Minute, 1), (failed.State, failed.StateAt, failed.PartsDelivered));
        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Sent(1)).State);
    }

    [Fact]
    public async Task Note_FailureAfterDelivery_StaysDelivered()
    {
        await SettleNext(1, ["ref"]);
        await Note("ref", DeliveryState.Delivered, Noon + Minute);

        Assert.Equal(NoteOutcome.Unchanged, await Note("ref", DeliveryState.Failed, Noon + Minute * 2));

        var sent = Assert.Single(await Sent(1));
        Assert.Equal((DeliveryState.Delivered, Noon + Minute), (sent.State, sent.StateAt));
    }

    [Fact]
    public async Task Note_OfAnotherLine_IsNotOfTheMessage()
    {
        await SettleNext(1, ["ref"]);

        Assert.Equal(NoteOutcome.Early, await Note("ref", DeliveryState.Delivered, line: "other"));

        Assert.Null(Assert.Single(await Sent(1)).State);
    }

    [Fact]
    public async Task Note_BeforeTheSendIsSettled_IsAppliedByTheSettling()
    {
        await Committed(Turn(1, 0, Message("s1-1")));
        var sending = await TakeOne();
        Assert.Equal(NoteOutcome.Early, await Note("a", DeliveryState.Failed, Noon + Minute));
        Assert.Equal(NoteOutcome.Early, await Note("a", DeliveryState.Delivered, Noon + Minute));
        Assert.Equal(NoteOutcome.Early, await Note("b", DeliveryState.Delivered, Noon + Minute * 2));
        Assert.Equal(NoteOutcome.Early, await Note("b", DeliveryState.Failed, Noon + Minute * 3));
        Clock.Advance(TimeSpan.FromMinutes(59));

        await Settle(sending, new Settlement.Sent(["a", "b"]));

        var sent = Assert.Single(await Sent(1));
        Assert.Equal((DeliveryState.Delivered, 2), (sent.State, sent.PartsDelivered));
    }

    [Fact]
    public async Task Note_MoreThanAnHourBeforeTheSettling_IsNotApplied()
    {
        await Committed(Turn(1, 0, Message("s1-1")));
        await Note("ref", DeliveryState.Delivered);
        Clock.Advance(TimeSpan.FromMinutes(61));

        await Settle(await TakeOne(), new Settlement.Sent(["ref"]));

        Assert.Null(Assert.Single(await Sent(1)).State);
    }

    [Fact]
    public async Task Note_FourDaysLater_IsStillFoundAndADayLaterNoMore()
    {
        await SettleNext(1, ["a", "b"]);
        Clock.Advance(TimeSpan.FromDays(4));
        Assert.Equal(NoteOutcome.Noted, await Note("a", DeliveryState.Delivered));

        Clock.Advance(TimeSpan.FromDays(1));

        Assert.Equal(NoteOutcome.Early, await Note("b", DeliveryState.Delivered));
    }

    [Fact]
    public async Task Note_ByAClockOfYesterday_IsFound()
    {
        await SettleNext(1, ["ref"]);

        var yesterday = Noon - Duration.FromHours(20);
        Assert.Equal(
            NoteOutcome.Noted, await Store.Note(Receipt("ref", DeliveryState.Delivered), yesterday, Cancel));
    }

    [Fact]
    public async Task Note_ForAMessageNoLongerInTheLog_IsKnownAndChangesNothing()
    {
        for (var n = 1; n <= 9; n++) await SettleNext(n, [$"ref {n}"], TimeSpan.FromSeconds(1));

        Assert.Equal(NoteOutcome.Unchanged, await Note("ref 1", DeliveryState.Delivered));

        Assert.All(await Sent(1), sent => Assert.Null(sent.State));
    }

    [Fact]
    public async Task Note_SideBySide_NoneIsLost()
    {
        var references = Enumerable.Range(0, 31).Select(part => $"part {part}").ToList();
        await SettleNext(1, references);

        await Task.WhenAll(references.Select(async part => await Note(part, DeliveryState.Delivered)));

        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Sent(1)).State);
    }

    [Fact]
    public async Task Settle_SentAgainByAnEarlierTaking_KeepsTheLogAsItIs()
    {
        await Committed(Turn(1, 0, Message("s1-1")));
        var sending = await TakeOne();
        await Settle(sending, new Settlement.Sent(["a"]));
        await Note("a", DeliveryState.Delivered);

        await Settle(sending, new Settlement.Sent(["b"]));

        Assert.Equal(DeliveryState.Delivered, Assert.Single(await Sent(1)).State);
    }

    private async Task SettleNext(int n, IReadOnlyList<string> references, TimeSpan later = default)
    {
        var now = Instant.FromDateTimeOffset(Clock.GetUtcNow());
        var version = (await Begin(1)).Version;
        await Committed(Turn(1, version, Message($"s1-{n}", notBefore: now)));
        await Settle(await TakeOne(now), new Settlement.Sent(references));
        Clock.Advance(later);
    }

    private ValueTask<IReadOnlyList<SentMessage>> Sent(int n) => Store.Sent(Store.KeyOf(Number(n)), Cancel);

    private ValueTask<NoteOutcome> Note(
        string reference, DeliveryState state, Instant? at = null, string line = Line) =>
        Store.Note(
            Receipt(reference, state, at, line), Instant.FromDateTimeOffset(Clock.GetUtcNow()), Cancel);

    private static Receipt Receipt(string reference, DeliveryState state, Instant? at = null, string line = Line) =>
        new(line, reference, state, at ?? Noon);
}
