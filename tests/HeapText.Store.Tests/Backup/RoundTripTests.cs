using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using NodaTime;

namespace HeapText.Store.Tests.Backup;

public sealed class RoundTripTests : IDisposable
{
    private static readonly Duration LeasesOver = Duration.FromMinutes(2);
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-backup-").FullName;

    private string BackupFile => Path.Combine(_folder, "season.heaptext");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(Home.Embedded, Home.Embedded)]
    [InlineData(Home.Embedded, Home.Redis)]
    [InlineData(Home.Redis, Home.Embedded)]
    [InlineData(Home.Redis, Home.Redis)]
    [InlineData(Home.Embedded, Home.Cluster)]
    [InlineData(Home.Cluster, Home.Embedded)]
    public async Task Restore_BackupOfALiveStore_ShowsAllThatWasThere(string from, string to)
    {
        await using var source = await Home.New(from);
        await using var target = await Home.New(to);
        List<string> before;
        BackupSummary taken;
        await using (var live = await source.Open(Season.ClockAt(Season.Noon)))
        {
            await Season.Write(live);
            taken = await source.Take(BackupFile, Season.ClockAt(Season.Noon));
            before = await Season.Seen(live);
        }

        var restored = await target.Restore(BackupFile);

        Assert.Equivalent(taken, restored, strict: true);
        Assert.Equal(Season.Farmers, taken.Counts["farmers"]);
        await using var store = await target.Open(Season.ClockAt(Season.Noon));
        Assert.Equal(before, await Season.Seen(store));
        Assert.Single(Directory.GetFiles(_folder));
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_WhatWasClaimedOrTaken_IsGivenOutAtOnce(string to)
    {
        await using var source = await Home.New(Home.Embedded);
        await using var target = await Home.New(to);
        await using (var live = await source.Open(Season.ClockAt(Season.Noon)))
        {
            await Season.Write(live);
            Assert.Empty(await live.ClaimDue(Season.Noon, LeasesOver, 10, Cancel));
            Assert.Single(await live.TakeNext("lake", Priority.Notice, Season.Noon, LeasesOver, 1, Cancel));
            await source.Take(BackupFile, Season.ClockAt(Season.Noon));
        }

        await target.Restore(BackupFile);

        await using var store = await target.Open(Season.ClockAt(Season.Noon));
        Assert.Single(await store.ClaimDue(Season.Noon, LeasesOver, 10, Cancel));
        Assert.Equal(
            ["s1-3", "s2-3", "s3-1", "s4-1", "s5-1", "s6-1"],
            (await store.TakeNext("lake", Priority.Notice, Season.Noon, LeasesOver, 10, Cancel))
                .Select(one => one.Message.Id).Order());
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_TwiceFromOneBackup_NeverNumbersTwoMessagesAlike(string to)
    {
        await using var source = await Home.New(to);
        await using (var live = await source.Open(Season.ClockAt(Season.Noon)))
        {
            await Season.Write(live);
            await source.Take(BackupFile, Season.ClockAt(Season.Noon));
        }

        var first = await MadeAfterRestore(source, atSecond: 1_800_000_000);
        var second = await MadeAfterRestore(source, atSecond: 1_800_000_060);

        Assert.Equal(1_800_000_000, first);
        Assert.Equal(1_800_000_060, second);
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Take_WithEveryKindOfWrite_HoldsNoNumberInClear(string kind)
    {
        await using var source = await Home.New(kind);
        Assert.True(Msisdn.TryParse("+999123456789", out var number));
        await using (var live = await source.Open(TimeProvider.System))
        {
            await Privacy.WriteEverything(live, number, Cancel);
            await live.ExplainWord(new OwnWord("41", "mbondo", "sw", null), Cancel);
        }

        await source.Take(BackupFile, Season.ClockAt(Season.Noon));

        Assert.True(Privacy.Holds(BackupFile, "text of a"));
        Assert.False(Privacy.Holds(BackupFile, "123456789"));
    }

    private async Task<long> MadeAfterRestore(Home home, long atSecond)
    {
        await StoreBackup.Restore(
            home.Options, BackupFile, replace: true, Season.ClockAt(Instant.FromUnixTimeSeconds(atSecond)), null,
            Cancel);
        await using var store = await home.Open(Season.ClockAt(Season.Noon));
        return (await store.Begin(store.KeyOf(Season.Number(1)), null, Season.Noon, Cancel)).Farmer!.MessagesMade;
    }
}
