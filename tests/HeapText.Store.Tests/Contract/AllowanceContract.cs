using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>Allow, and putting back what was not allowed.</summary>
public abstract partial class StoreContract
{
    private static readonly Duration Second = Duration.FromSeconds(1);
    private static readonly LineBudget Ten = new(Line, 10, null, null, DateTimeZone.Utc);

    [Fact]
    public async Task Allow_AskedForRoomAlone_ChargesNothing()
    {
        for (var i = 0; i < 3; i++)
            Assert.Equal(new Allowance(0, 10, Priority.Notice, Noon), await Allow(Ten, Noon));
    }

    [Fact]
    public async Task Allow_MoreThanTheRate_GrantsASecondsWorthAndSaysWhenToAskAgain()
    {
        var first = await Allow(Ten, Noon, Loads(6, 2));
        var later = await Allow(Ten, Noon + (Second / 2), Loads(1, 1));

        Assert.Equal((5, 0, Noon + Second), (first.Granted, first.Room, first.AskAgain));
        Assert.Equal((0, 0, Noon + Second), (later.Granted, later.Room, later.AskAgain));
        Assert.Equal(5, (await Allow(Ten, Noon + Second, Loads(6, 2))).Granted);
    }

    [Fact]
    public async Task Allow_TwoStoresOverTheSameLine_ShareTheRate()
    {
        var other = await AnotherOverTheSame();
        var granted = 0;

        await Parallel.ForAsync(0, 20, Cancel, async (n, _) => Interlocked.Add(
            ref granted, (await (n % 2 == 0 ? Store : other).Allow(Ten, Loads(1, 1), Noon, Cancel)).Granted));

        Assert.Equal(10, granted);
        if (other != Store) await other.DisposeAsync();
    }

    [Fact]
    public async Task TakeOff_WhatWasGranted_FreesTheCapsOfItsDayAndNotTheRate()
    {
        var capped = Ten with { SegmentsPerDay = 10, SegmentsPerDayOfAll = 10 };
        Assert.Equal(10, (await Allow(capped, Noon, Loads(20, 1))).Granted);

        await Store.TakeOff(capped, 4, Noon, Cancel);

        Assert.Equal(0, (await Allow(capped, Noon, Loads(20, 1))).Granted);
        Assert.Equal(4, (await Allow(capped, Noon + Second, Loads(20, 1))).Granted);
        Assert.Null((await Allow(capped with { Line = "other" }, Noon + Second)).Through);
    }

    [Fact]
    public async Task TakeOff_OfADayWithoutCount_AddsNoRoom()
    {
        var capped = Ten with { SegmentsPerDay = 3 };

        await Store.TakeOff(capped, 4, Noon, Cancel);

        Assert.Equal(3, (await Allow(capped, Noon, Loads(20, 1))).Granted);
    }

    [Fact]
    public async Task Allow_AnotherLine_HasItsOwnRate()
    {
        await Allow(Ten, Noon, Loads(10, 1));

        Assert.Equal(10, (await Allow(Ten with { Line = "other" }, Noon, Loads(10, 1))).Granted);
    }

    [Fact]
    public async Task Allow_MessageLongerThanASecond_TakesTheSecondsThatFollow()
    {
        var two = Ten with { SegmentsPerSecond = 2 };

        Assert.Equal(1, (await Allow(two, Noon, Loads(2, 5))).Granted);

        Assert.Equal(0, (await Allow(two, Noon + Second, Loads(1, 1))).Granted);
        Assert.Equal(1, (await Allow(two, Noon + (Second * 2), Loads(2, 1))).Granted);
        Assert.Equal(1, (await Allow(two, Noon + (Second * 4), Loads(1, 5))).Granted);
    }

    [Fact]
    public async Task Allow_RateBelowOne_IsOneSegmentInThatTime()
    {
        var slow = Ten with { SegmentsPerSecond = 0.1 };

        Assert.Equal(1, (await Allow(slow, Noon, Loads(2, 1))).Granted);
        Assert.Equal(0, (await Allow(slow, Noon + (Second * 9), Loads(1, 1))).Granted);
        Assert.Equal(1, (await Allow(slow, Noon + (Second * 10), Loads(1, 1))).Granted);
    }

    [Fact]
    public async Task Allow_AskedAtRandomForAMinute_NoSecondHoldsMoreThanTheRate()
    {
        var random = new Random(20260302);
        var sent = new List<(Instant At, int Segments)>();
        for (var at = Noon; at < Noon + Minute; at += Duration.FromMilliseconds(random.Next(1, 250)))
        {
            var loads = Loads(random.Next(1, 8), random.Next(1, 4));
            var granted = (await Allow(Ten, at, loads)).Granted;
            sent.AddRange(loads.Take(granted).Select(load => (at, load.Segments)));
        }

        Assert.All(sent, one => Assert.InRange(
            sent.Where(other => other.At >= one.At && other.At < one.At + Second).Sum(other => other.Segments), 1, 10));
        Assert.InRange(sent.Sum(one => one.Segments), 400, 610);
    }

    [Fact]
    public async Task Allow_ClockSetBackAnHour_GoesOnWithinAMinute()
    {
        await Allow(Ten, Noon, Loads(10, 1));
        var back = Noon - Duration.FromHours(1);

        Assert.Equal(10, (await Allow(Ten, back, Loads(10, 1))).Granted);
    }

    [Fact]
    public async Task Allow_DayCapNears_NoticesStopFirstThenRemindersThenReplies()
    {
        var capped = Ten with { SegmentsPerSecond = 1_000, SegmentsPerDay = 100 };

        Assert.Equal(80, (await Allow(capped, Noon, Loads(100, 1, Priority.Notice))).Granted);
        Assert.Equal(10, (await Allow(capped, Noon, Loads(100, 1, Priority.Reminder))).Granted);
        Assert.Equal(Priority.Reply, (await Allow(capped, Noon)).Through);
        var replies = await Allow(capped, Noon, Loads(100, 1));
        Assert.Equal((10, null), (replies.Granted, replies.Through));
        Assert.Equal(Instant.FromUtc(2026, 3, 3, 0, 0), replies.AskAgain);
    }

    [Fact]
    public async Task Allow_MessageThatWouldPassTheCap_IsNotGranted()
    {
        var capped = Ten with { SegmentsPerDay = 4 };

        Assert.Equal(1, (await Allow(capped, Noon, Loads(2, 3))).Granted);
        Assert.Equal(1, (await Allow(capped, Noon, Loads(2, 1))).Granted);
    }

    [Fact]
    public async Task Allow_NextDayInItsZone_CountsAnew()
    {
        var nairobi = DateTimeZoneProviders.Tzdb["Africa/Nairobi"];
        var capped = Ten with { SegmentsPerDay = 5, Zone = nairobi };
        var midnight = Instant.FromUtc(2026, 3, 2, 21, 0);

        Assert.Equal(5, (await Allow(capped, midnight - Second, Loads(9, 1))).Granted);

        Assert.Equal(midnight, (await Allow(capped, midnight - Second)).AskAgain);
        Assert.Equal(5, (await Allow(capped, midnight, Loads(9, 1))).Granted);
    }

    [Fact]
    public async Task Allow_CapOverAllLines_CountsEveryLine()
    {
        var capped = Ten with { SegmentsPerDayOfAll = 12 };

        Assert.Equal(10, (await Allow(capped, Noon, Loads(10, 1))).Granted);

        Assert.Equal(2, (await Allow(capped with { Line = "other" }, Noon, Loads(10, 1))).Granted);
    }

    [Fact]
    public async Task Allow_StoreOpenedAgain_KnowsWhatTheDayHasTaken()
    {
        var capped = Ten with { SegmentsPerDay = 5 };
        await Allow(capped, Noon, Loads(4, 1));

        await Reopen();

        Assert.Equal(1, (await Allow(capped, Noon + Minute, Loads(4, 1))).Granted);
    }

    [Fact]
    public async Task TakeNext_ThroughReminders_LeavesNotices()
    {
        await Committed(Turn(1, 0, Message("notice", Priority.Notice)));
        await Committed(Turn(2, 0, Message("reminder", Priority.Reminder)));

        Assert.Equal(["reminder"], Ids(await Store.TakeNext(Line, Priority.Reminder, Noon, Lease, 10, Cancel)));
        Assert.Equal(["notice"], Ids(await Take()));
    }

    [Fact]
    public async Task Settle_PutBack_GivesItAtItsMomentAsTheSameAttempt()
    {
        await Committed(Turn(1, 0, Message("a"), Message("b")));

        await Settle(await TakeOne(), new Settlement.PutBack(Noon + Minute));

        Assert.Empty(await Take(Noon + Minute - Duration.FromMilliseconds(1)));
        var again = await TakeOne(Noon + Minute);
        Assert.Equal(("a", 1), (again.Message.Id, again.Attempt));
        await Settle(again, new Settlement.Retry(Noon + Minute));
        var tried = await TakeOne(Noon + Minute);
        await Settle(tried, new Settlement.PutBack(Noon + Minute));
        Assert.Equal(2, (await TakeOne(Noon + Minute)).Attempt);
    }

    [Fact]
    public async Task Settle_PutBackByAnEarlierTaking_LeavesTheLaterOneInFlight()
    {
        await Committed(Turn(1, 0, Message("a")));
        var early = await TakeOne();
        await TakeOne(Noon + Lease);

        await Settle(early, new Settlement.PutBack(Noon));

        Assert.Empty(await Take(Noon + Lease));
    }

    [Fact]
    public async Task GiveBack_PutBackTooFarAhead_IsReadyNow()
    {
        await Committed(Turn(1, 0, Message("a")));
        await Settle(await TakeOne(), new Settlement.PutBack(Noon + Duration.FromHours(1)));

        await Store.GiveBack(Line, Noon, Lease, Cancel);

        Assert.Equal(1, (await TakeOne()).Attempt);
    }

    private static List<Load> Loads(int count, int segments, Priority priority = Priority.Reply) =>
        [.. Enumerable.Repeat(new Load(priority, segments), count)];

    private ValueTask<Allowance> Allow(LineBudget budget, Instant now, List<Load>? loads = null) =>
        Store.Allow(budget, loads ?? [], now, Cancel);
}
