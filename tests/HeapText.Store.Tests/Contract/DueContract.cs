using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>ClaimDue and NextWake.</summary>
public abstract partial class StoreContract
{
    private static readonly Duration Minute = Duration.FromMinutes(1);

    [Fact]
    public async Task ClaimDue_NotYetDue_ClaimsNothing()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon });

        Assert.Empty(await Claim(Noon - Duration.FromMilliseconds(1)));
        Assert.Equal([1], await Claim(Noon));
    }

    [Fact]
    public async Task ClaimDue_BetweenMilliseconds_IsNeverEarly()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon + Duration.FromNanoseconds(100) });

        Assert.Empty(await Claim(Noon));
        Assert.Equal([1], await Claim(Noon + Duration.FromMilliseconds(1)));
    }

    [Fact]
    public async Task ClaimDue_ManyDue_EarliestFirstAndNoMoreThanAsked()
    {
        foreach (var n in new[] { 3, 1, 5, 2, 4 })
            await Committed(Turn(n, 0) with { NextDue = Noon + Minute * n });

        Assert.Equal([1, 2, 3], await Claim(Noon + Minute * 9, most: 3));
        Assert.Equal([4, 5], await Claim(Noon + Minute * 9, most: 3));
    }

    [Fact]
    public async Task ClaimDue_ClaimedBefore_OnlyAfterTheLeaseEnds()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon });
        Assert.Equal([1], await Claim(Noon));

        Assert.Empty(await Claim(Noon + Lease - Duration.FromMilliseconds(1)));
        Assert.Equal([1], await Claim(Noon + Lease));
    }

    [Fact]
    public async Task Commit_NextDueOnClaimedFarmer_EndsTheClaim()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon });
        await Claim(Noon);

        await Committed(Turn(1, 1) with { NextDue = Noon + Duration.FromSeconds(5) });

        Assert.Empty(await Claim(Noon + Duration.FromSeconds(4)));
        Assert.Equal([1], await Claim(Noon + Duration.FromSeconds(5)));
    }

    [Fact]
    public async Task Commit_LaterNextDueOnClaimedFarmer_IsNotClaimedWhenTheLeaseEnds()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon });
        await Claim(Noon);

        await Committed(Turn(1, 1) with { NextDue = Noon + Duration.FromDays(3) });

        Assert.Empty(await Claim(Noon + Duration.FromDays(2)));
        Assert.Equal([1], await Claim(Noon + Duration.FromDays(3)));
    }

    [Fact]
    public async Task Commit_NothingDueNext_ClaimsNothingMore()
    {
        await Committed(Turn(1, 0) with { NextDue = Noon });

        await Committed(Turn(1, 1));

        Assert.Empty(await Claim(Noon + Duration.FromDays(9)));
    }

    [Fact]
    public async Task NextWake_NothingWaits_IsNull()
    {
        await Committed(Turn(1, 0));

        Assert.Null(await Store.NextWake(Cancel));
    }

    [Fact]
    public async Task NextWake_DueAndMessagesWait_IsTheEarliest()
    {
        var notice = Message("a", Priority.Notice, Noon + Minute * 3);
        await Committed(Turn(1, 0, notice) with { NextDue = Noon + Minute * 4 });
        Assert.Equal(Noon + Minute * 3, await Store.NextWake(Cancel));

        await Committed(Turn(2, 0) with { NextDue = Noon + Minute * 2 });
        Assert.Equal(Noon + Minute * 2, await Store.NextWake(Cancel));

        await Committed(Turn(3, 0, Message("b", Priority.Reminder, Noon + Minute, "other")));
        Assert.Equal(Noon + Minute, await Store.NextWake(Cancel));
    }

    [Fact]
    public async Task NextWake_StoreOpenedAgain_IsKept()
    {
        await Committed(Turn(1, 0, Message("a", Priority.Notice, Noon + Minute, "other")));

        await Reopen();

        Assert.Equal(Noon + Minute, await Store.NextWake(Cancel));
    }

    [Fact]
    public async Task NextWake_AllTaken_IsWhenTheFirstLeaseEnds()
    {
        await Committed(Turn(1, 0, Message("a")) with { NextDue = Noon });
        await Claim(Noon);
        await Take();

        Assert.Equal(Noon + Lease, await Store.NextWake(Cancel));
    }

    private async Task<IEnumerable<int>> Claim(Instant now, int most = 10)
    {
        var claimed = await Store.ClaimDue(now, Lease, most, Cancel);
        return claimed.Select(key => Enumerable.Range(1, 99).Single(n => Store.KeyOf(Number(n)) == key));
    }
}
