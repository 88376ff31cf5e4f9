using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>Begin and Commit.</summary>
public abstract partial class StoreContract
{
    private static readonly SeenId Inbound = new(Line, "in-1");

    [Fact]
    public async Task KeyOf_SameNumber_SameKeyInEveryStore()
    {
        var key = Store.KeyOf(Number(1));

        await Reopen();

        Assert.Equal(key, Store.KeyOf(Number(1)));
        Assert.NotEqual(key, Store.KeyOf(Number(2)));
        Assert.Matches("^[0-9a-f]{32}$", key.Hash);
    }

    [Fact]
    public async Task Begin_UnknownNumber_StartsFromNothing() =>
        Assert.Equal(new TurnStart(null, 0, null, false), await Begin(1, Inbound));

    [Fact]
    public async Task Begin_KnownNumber_GivesRecordVersionAndNumber()
    {
        await Committed(Turn(1, 0));
        await Committed(Turn(1, 1) with { Farmer = Record(1, group: 41) });

        Assert.Equal(new TurnStart(Record(1, group: 41), 2, Number(1), false), await Begin(1));
    }

    [Fact]
    public async Task Begin_MessageCommittedBefore_IsSeen()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound });

        Assert.True((await Begin(1, Inbound)).Seen);
        Assert.False((await Begin(1)).Seen);
        Assert.False((await Begin(1, Inbound with { Line = "other" })).Seen);
        Assert.False((await Begin(1, Inbound with { Id = "in-2" })).Seen);
    }

    [Fact]
    public async Task Begin_SameIdFromAnotherFarmer_IsNotSeen()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound });
        await Committed(Turn(2, 0));

        Assert.False((await Begin(2, Inbound)).Seen);
    }

    [Fact]
    public async Task Begin_SevenDaysLater_SeenUntilThenAndNoLonger()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound });

        Assert.True((await Begin(1, Inbound, Noon + SeenId.Kept)).Seen);
        Assert.False((await Begin(1, Inbound, Noon + SeenId.Kept + Duration.FromMilliseconds(1))).Seen);
    }

    [Fact]
    public async Task Commit_OlderThanSevenDaysId_TakesEffectAgain()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound });

        await Committed(Turn(1, 1) with { Seen = Inbound, At = Noon + Duration.FromDays(8) });

        Assert.True((await Begin(1, Inbound, Noon + Duration.FromDays(8))).Seen);
    }

    [Fact]
    public async Task Commit_SameMessageAgain_IsDuplicateAndChangesNothing()
    {
        await Committed(Turn(1, 0, Message("a")) with { Seen = Inbound });

        var again = Turn(1, 1, Message("b")) with { Seen = Inbound, Farmer = Record(1, group: 41), NextDue = Noon };

        Assert.Equal(CommitOutcome.Duplicate, await Store.Commit(again, Cancel));
        await OnlyFirstCommitRemains();
    }

    [Fact]
    public async Task Commit_SameMessageFromItsOldVersion_IsDuplicateNotConflict()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound });

        Assert.Equal(CommitOutcome.Duplicate, await Store.Commit(Turn(1, 0) with { Seen = Inbound }, Cancel));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public async Task Commit_FromAnotherVersion_IsConflictAndChangesNothing(long version)
    {
        await Committed(Turn(1, 0, Message("a")));

        var turn = Turn(1, version, Message("b"));
        var other = turn with { Seen = Inbound, Farmer = Record(1, group: 41), NextDue = Noon };

        Assert.Equal(CommitOutcome.Conflict, await Store.Commit(other, Cancel));
        Assert.False((await Begin(1, Inbound)).Seen);
        await OnlyFirstCommitRemains();
    }

    [Fact]
    public async Task Begin_StepAnsweredBefore_GivesTheSameScreenAlsoAfterAReopen()
    {
        var shown = new Screen("Chagua 1 au 2. \u1201", true);
        await Committed(Turn(1, 0) with { Seen = Inbound, Answer = shown });
        await Committed(Turn(1, 1) with { Seen = Inbound with { Id = "in-2" }, Answer = new Screen("End", false) });

        await Reopen();

        Assert.Equal((true, shown), ((await Begin(1, Inbound)).Seen, (await Begin(1, Inbound)).Answer));
        Assert.Equal(new Screen("End", false), (await Begin(1, Inbound with { Id = "in-2" })).Answer);
        Assert.Null((await Begin(1, Inbound with { Id = "in-3" })).Answer);
        Assert.Null((await Begin(1)).Answer);
    }

    [Fact]
    public async Task Begin_AnswerPastKeeping_IsNotGivenThoughLaterOnesAre()
    {
        var later = Inbound with { Id = "in-2" };
        var end = Noon + Screen.Kept;
        await Committed(Turn(1, 0) with { Seen = Inbound, Answer = new Screen("first", true) });
        await Committed(Turn(1, 1) with { At = end, Seen = later, Answer = new Screen("second", true) });

        Assert.Equal("first", (await Begin(1, Inbound, end)).Answer!.Text);
        var past = await Begin(1, Inbound, end + Duration.FromMilliseconds(1));
        Assert.Equal((true, null), (past.Seen, past.Answer));
        Assert.Equal("second", (await Begin(1, later, end + Duration.FromMilliseconds(1))).Answer!.Text);
    }

    [Fact]
    public async Task Commit_SameStepAgain_LeavesTheFirstAnswer()
    {
        await Committed(Turn(1, 0) with { Seen = Inbound, Answer = new Screen("first", true) });

        var again = Turn(1, 1) with { Seen = Inbound, Answer = new Screen("second", true) };

        Assert.Equal(CommitOutcome.Duplicate, await Store.Commit(again, Cancel));
        Assert.Equal("first", (await Begin(1, Inbound)).Answer!.Text);
    }

    [Fact]
    public async Task Commit_VersionOfAbsentRecord_IsConflict() =>
        Assert.Equal(CommitOutcome.Conflict, await Store.Commit(Turn(1, 1), Cancel));

    [Fact]
    public async Task Commit_StoreOpenedAgain_WholeEffectIsThere()
    {
        await Committed(Turn(1, 0, Message("a")) with
        {
            Seen = Inbound,
            Farmer = Record(1, group: 41),
            NextDue = Noon + Lease,
        });

        await Reopen();

        Assert.Equal(new TurnStart(Record(1, group: 41), 1, Number(1), true), await Begin(1, Inbound));
        Assert.Equal("a", (await TakeOne()).Message.Id);
        Assert.Single(await Store.ClaimDue(Noon + Lease, Lease, 10, Cancel));
        Assert.Single(await Store.Members(41, Cancel));
    }

    [Fact]
    public async Task Commit_KeyOfAnotherNumber_IsRefused() =>
        await Assert.ThrowsAsync<ArgumentException>(
            async () => await Store.Commit(Turn(1, 0) with { Number = Number(2) }, Cancel));

    [Fact]
    public async Task Commit_CancelledBefore_Throws() =>
        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            async () => await Store.Commit(Turn(1, 0), new CancellationToken(canceled: true)));

    private async Task OnlyFirstCommitRemains()
    {
        Assert.Equal(new TurnStart(Record(1), 1, Number(1), false), await Begin(1));
        Assert.Empty(await Store.Members(41, Cancel));
        Assert.Empty(await Store.ClaimDue(Noon, Lease, 10, Cancel));
        var sending = await TakeOne();
        Assert.Equal("a", sending.Message.Id);
        await Settle(sending, new Settlement.Sent([]));
        Assert.Empty(await Take());
    }
}
