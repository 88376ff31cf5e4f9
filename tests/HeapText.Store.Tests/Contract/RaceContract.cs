using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>Many callers at once.</summary>
public abstract partial class StoreContract
{
    [Fact]
    public async Task Commit_SixtyFourTurnsOnOneFarmer_NoUpdateIsLost()
    {
        await Committed(Turn(1, 0) with { Farmer = Record(1, group: 0) });

        await Task.WhenAll(Enumerable.Range(1, 64).Select(turn => Task.Run(() => CountUp(turn), Cancel)));

        var end = await Begin(1);
        Assert.Equal(64, end.Farmer!.Group);
        Assert.Equal(65, end.Version);
    }

    [Fact]
    public async Task Commit_SameMessageSideBySide_HasOneEffect()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 64).Select(n => Task.Run(
            async () => await Store.Commit(Turn(1, n % 2, Message($"m{n}")) with { Seen = Inbound }, Cancel), Cancel)));

        Assert.Single(outcomes, CommitOutcome.Committed);
        Assert.Equal(1, (await Begin(1)).Version);
        await Settle(await TakeOne(), new Settlement.Sent([]));
        Assert.Empty(await Take());
    }

    [Fact]
    public async Task ClaimDue_SideBySide_EachFarmerOnce()
    {
        await Task.WhenAll(Enumerable.Range(1, 200).Select(
            async n => await Committed(Turn(n, 0) with { NextDue = Noon })));
        await using var other = await Open();

        var claims = await Task.WhenAll(Enumerable.Range(0, 16).Select(n => Task.Run(
            async () => await (n % 2 == 0 ? Store : other).ClaimDue(Noon, Lease, 50, Cancel), Cancel)));

        var claimed = claims.SelectMany(keys => keys).ToList();
        Assert.Equal(claimed.Count, claimed.Distinct().Count());
        claimed.AddRange(await Store.ClaimDue(Noon, Lease, 200, Cancel));
        Assert.Equal(Keys([.. Enumerable.Range(1, 200)]), claimed.ToHashSet());
    }

    [Fact]
    public async Task TakeNext_TwoStoresSideBySide_EachMessageOnce()
    {
        await Task.WhenAll(Enumerable.Range(1, 200).Select(async n => await Committed(Turn(n, 0, Message($"m{n}")))));
        await using var other = await Open();

        var takes = await Task.WhenAll(Enumerable.Range(0, 16).Select(n => Task.Run(
            async () => await (n % 2 == 0 ? Store : other).TakeNext(
                Line, Priority.Notice, Noon, Lease, 50, Cancel),
            Cancel)));

        var taken = takes.SelectMany(Ids).ToList();
        Assert.Equal(taken.Count, taken.Distinct().Count());
        Assert.Equal(200, taken.Count + (await Take(most: 200)).Count);
    }

    [Fact]
    public async Task Commit_ClaimRunningAlongside_NoDueInstantIsLost()
    {
        for (var n = 1; n <= 40; n++) await Committed(Turn(n, 0) with { NextDue = Noon });
        var later = Noon + Duration.FromDays(1);

        var claiming = Task.Run(async () => await Store.ClaimDue(Noon, Lease, 40, Cancel), Cancel);
        await Task.WhenAll(Enumerable.Range(1, 40).Select(
            async n => await Committed(Turn(n, 1) with { NextDue = later })));
        await claiming;

        Assert.Empty(await Store.ClaimDue(later - Duration.FromMilliseconds(1), Lease, 99, Cancel));
        Assert.Equal(40, (await Store.ClaimDue(later, Lease, 99, Cancel)).Count);
    }

    private async Task CountUp(int turn)
    {
        while (true)
        {
            var start = await Begin(1);
            var commit = Turn(1, start.Version) with
            {
                Seen = new SeenId(Line, $"in-{turn}"),
                Farmer = Record(1, start.Farmer!.Group + 1),
            };
            if (await Store.Commit(commit, Cancel) == CommitOutcome.Committed) return;
        }
    }
}
