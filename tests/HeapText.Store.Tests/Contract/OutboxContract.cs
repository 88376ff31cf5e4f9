using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>TakeNext and Settle.</summary>
public abstract partial class StoreContract
{
    [Fact]
    public async Task TakeNext_MessageReady_GivesItWholeWithItsNumber()
    {
        var message = Message("a", Priority.Reminder);
        await Committed(Turn(1, 0, message));

        Assert.Equal(new Sending(Store.KeyOf(Number(1)), Number(1), message, 1), await TakeOne());
    }

    [Fact]
    public async Task TakeNext_BeforeItsTime_GivesNothing()
    {
        await Committed(Turn(1, 0, Message("a", notBefore: Noon + Minute)));

        Assert.Empty(await Take(Noon + Minute - Duration.FromMilliseconds(1)));
        Assert.Single(await Take(Noon + Minute));
    }

    [Fact]
    public async Task TakeNext_MessageOfAnotherLine_IsNotGiven()
    {
        await Committed(Turn(1, 0, Message("a", line: "other")));

        Assert.Empty(await Take());
        Assert.Single(await Take(line: "other"));
    }

    [Fact]
    public async Task TakeNext_ManyFarmers_ByPriorityThenNotBefore()
    {
        await Committed(Turn(1, 0, Message("notice", Priority.Notice, Noon - Minute * 5)));
        await Committed(Turn(2, 0, Message("reminder", Priority.Reminder, Noon - Minute * 9)));
        await Committed(Turn(3, 0, Message("reply 2", Priority.Reply, Noon - Minute)));
        await Committed(Turn(4, 0, Message("reply 1", Priority.Reply, Noon - Minute * 2)));

        Assert.Equal(["reply 1", "reply 2", "reminder"], Ids(await Take(most: 3)));
        Assert.Equal(["notice"], Ids(await Take(most: 3)));
    }

    [Fact]
    public async Task TakeNext_SeveralOfOneFarmer_OneInFlightInOrder()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        await Committed(Turn(1, 1, Message("c")));

        foreach (var id in new[] { "a", "b", "c" })
        {
            var sending = await TakeOne();
            Assert.Equal(id, sending.Message.Id);
            Assert.Empty(await Take());
            await Settle(sending, new Settlement.Sent([]));
        }
        Assert.Empty(await Take());
    }

    [Fact]
    public async Task TakeNext_CommitWhileOneIsInFlight_StillOneInFlight()
    {
        await Committed(Turn(1, 0, Message("a")));
        var first = await TakeOne();

        await Committed(Turn(1, 1, Message("b", notBefore: Noon - Minute)));

        Assert.Empty(await Take());
        await Settle(first, new Settlement.Sent([]));
        Assert.Equal("b", (await TakeOne()).Message.Id);
    }

    [Fact]
    public async Task TakeNext_ScheduledNoticeWaits_DoesNotHoldBackAReply()
    {
        var morning = Noon + Duration.FromHours(20);
        await Committed(Turn(1, 0, Message("notice", Priority.Notice, morning)));
        await Committed(Turn(1, 1, Message("reply")));

        var reply = await TakeOne();

        Assert.Equal("reply", reply.Message.Id);
        await Settle(reply, new Settlement.Sent([]));
        Assert.Empty(await Take());
        Assert.Equal("notice", (await TakeOne(morning)).Message.Id);
    }

    [Fact]
    public async Task TakeNext_OneFarmerOnTwoLines_OrderKeptAcrossThem()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b", line: "other"), Message("c")));

        var first = await TakeOne();
        Assert.Empty(await Take(line: "other"));
        await Settle(first, new Settlement.Sent([]));
        Assert.Empty(await Take());
        await Settle(Assert.Single(await Take(line: "other")), new Settlement.Sent([]));
        Assert.Equal("c", (await TakeOne()).Message.Id);
    }

    [Fact]
    public async Task TakeNext_EarlierMessageOnAnotherLineCommittedLater_GoesFirst()
    {
        await Committed(Turn(1, 0, Message("a", Priority.Notice, Noon + Minute, "other")));
        await Committed(Turn(1, 1, Message("b")));

        Assert.Empty(await Take(Noon + Minute, line: "other"));
        var first = await TakeOne(Noon + Minute);
        await Settle(first, new Settlement.Sent([]));

        Assert.Equal(["a"], Ids(await Take(Noon + Minute, line: "other")));
    }

    [Fact]
    public async Task TakeNext_LeaseEnded_GivesTheSameMessageAgain()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        var first = await TakeOne();

        Assert.Empty(await Take(Noon + Lease - Duration.FromMilliseconds(1)));
        Assert.Equal(first with { Attempt = 2 }, await TakeOne(Noon + Lease));
        Assert.Equal(first with { Attempt = 3 }, await TakeOne(Noon + Lease * 2));
    }

    [Fact]
    public async Task Settle_Retry_GivesTheSameMessageAtItsMomentAndHoldsBackTheNext()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        var first = await TakeOne();

        await Settle(first, new Settlement.Retry(Noon + Minute * 5));
        await Committed(Turn(1, 1, Message("c", notBefore: Noon - Minute)));

        Assert.Empty(await Take(Noon + Minute * 5 - Duration.FromMilliseconds(1)));
        Assert.Equal(first with { Attempt = 2 }, await TakeOne(Noon + Minute * 5));
    }

    [Fact]
    public async Task Settle_SetAside_KeepsItWithItsReasonAndGivesTheNext()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        Clock.Advance(TimeSpan.FromHours(1));

        await Settle(await TakeOne(), new Settlement.SetAside("expired"));

        var kept = Assert.Single(await SetAside(10));
        Assert.Equal(
            new(Store.KeyOf(Number(1)), Number(1), Noon + Duration.FromHours(1), "expired", Message("a")), kept);
        Assert.Equal("b", (await TakeOne()).Message.Id);
    }

    [Fact]
    public async Task Settle_SeveralSetAside_NewestFirst()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        await Settle(await TakeOne(), new Settlement.SetAside("expired"));
        Clock.Advance(TimeSpan.FromSeconds(1));
        await Settle(await TakeOne(), new Settlement.SetAside("refused"));

        Assert.Equal(["refused", "expired"], (await SetAside(10)).Select(kept => kept.Reason));
        Assert.Equal(["refused"], (await SetAside(1)).Select(kept => kept.Reason));
    }

    [Theory]
    [InlineData("sent")]
    [InlineData("retry")]
    [InlineData("set aside")]
    public async Task Settle_MessageNoLongerThere_DoesNothing(string how)
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        var first = await TakeOne();
        await Settle(first, new Settlement.Sent([]));
        var second = await TakeOne();

        await Settle(first, How(how));

        Assert.Empty(await Take());
        Assert.Equal(second with { Attempt = 2 }, await TakeOne(Noon + Lease));
        Assert.Empty(await SetAside(10));
    }

    [Fact]
    public async Task Settle_UnknownFarmer_DoesNothing()
    {
        await Settle(new Sending(Store.KeyOf(Number(9)), Number(9), Message("a"), 1), new Settlement.Sent([]));

        Assert.True(await Store.IsEmpty(Cancel));
    }

    [Fact]
    public async Task Settle_MessageNeverTaken_DoesNothing()
    {
        await Committed(Turn(1, 0, Message("a")));

        await Settle(new Sending(Store.KeyOf(Number(1)), Number(1), Message("a"), 1), new Settlement.Sent([]));

        Assert.Equal("a", (await TakeOne()).Message.Id);
    }

    [Theory]
    [InlineData("retry")]
    [InlineData("set aside")]
    public async Task Settle_ByAnEarlierTaking_LeavesTheLaterOneInFlight(string how)
    {
        await Committed(Turn(1, 0, Message("a")));
        var early = await TakeOne();
        var late = await TakeOne(Noon + Lease);

        await Settle(early, How(how));

        Assert.Empty(await Take(Noon + Lease + Minute - Duration.FromMilliseconds(1)));
        Assert.Equal(late with { Attempt = 3 }, await TakeOne(Noon + Lease * 2));
    }

    [Fact]
    public async Task Settle_SentByAnEarlierTaking_IsBelieved()
    {
        await Committed(Turn(1, 0, Message("a")));
        var early = await TakeOne();
        await TakeOne(Noon + Lease);

        await Settle(early, new Settlement.Sent([]));

        Assert.Empty(await Take(Noon + Duration.FromDays(9)));
        Assert.Null(await Store.NextWake(Cancel));
    }

    [Fact]
    public async Task TakeNext_StoreOpenedAgain_KeepsOrderAndAttempts()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));
        var first = await TakeOne();

        await Reopen();

        Assert.Equal(first with { Attempt = 2 }, await TakeOne(Noon + Lease));
    }

    [Fact]
    public async Task TakeNext_ThousandsWait_GivesEachOnceAndNeverMoreThanAsked()
    {
        await Task.WhenAll(Enumerable.Range(1, 2_000).Select(async n => await Committed(Turn(n, 0, Message($"m{n}")))));
        var taken = new List<string>();

        while (await Take(most: 300) is { Count: > 0 } some)
        {
            Assert.True(some.Count <= 300);
            taken.AddRange(Ids(some));
        }

        Assert.Equal(2_000, taken.Count);
        Assert.Equal(2_000, taken.Distinct().Count());
    }

    [Fact]
    public async Task GiveBack_TakenAndPostponedTooFarAhead_AreReadyNowAsTheNextAttempt()
    {
        var hour = Duration.FromHours(1);
        await Committed(Turn(1, 0, Message("a")));
        await Committed(Turn(2, 0, Message("b")));
        var taken = await Take(Noon + hour);
        await Settle(taken[0], new Settlement.Retry(Noon + hour * 2));

        await Store.GiveBack(Line, Noon, Lease, Cancel);

        Assert.Equal(["a", "b"], Ids(await Take()).Order());
        Assert.All(await Take(Noon + Lease), sending => Assert.Equal(3, sending.Attempt));
    }

    [Fact]
    public async Task GiveBack_NotTooFarAheadOrNeverTakenOrOfAnotherLine_StaysAsItIs()
    {
        var hour = Duration.FromHours(1);
        await Committed(Turn(1, 0, Message("leased")));
        await Committed(Turn(2, 0, Message("scheduled", notBefore: Noon + hour)));
        await Committed(Turn(3, 0, Message("elsewhere", line: "other")));
        await TakeOne();
        Assert.Single(await Take(Noon + hour, line: "other"));

        await Store.GiveBack(Line, Noon, Lease, Cancel);

        Assert.Empty(await Take(Noon + Lease - Duration.FromMilliseconds(1)));
        Assert.Empty(await Take(Noon + hour, line: "other"));
        Assert.Equal(["leased", "scheduled"], Ids(await Take(Noon + hour)).Order());
    }

    private static Settlement How(string how) => how switch
    {
        "sent" => new Settlement.Sent([]),
        "retry" => new Settlement.Retry(Noon),
        _ => new Settlement.SetAside("refused"),
    };
}
