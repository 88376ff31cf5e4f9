using System.Diagnostics;
using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Store.Tests.Records;
using NodaTime;

namespace HeapText.Store.Tests.Backup;

/// <summary>A programme of ten thousand farmers, each with a heap, taken out and put back; prints what it
/// takes.</summary>
public sealed class TenThousandFarmersTests(ITestOutputHelper output)
{
    private const int Farmers = 10_000;
    private const int AtOnce = 500;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Home.Embedded, Home.Redis)]
    [InlineData(Home.Redis, Home.Embedded)]
    public async Task BackupAndRestore_OfTenThousand_KeepEachOne(string from, string to)
    {
        await using var source = await Home.New(from);
        await using var target = await Home.New(to);
        await using (var store = await source.Open(Season.ClockAt(Season.Noon))) await Fill(store);
        var file = Path.Combine(source.Options.DataDirectory, "all.heaptext");

        var since = Stopwatch.GetTimestamp();
        var taken = await source.Take(file, TimeProvider.System);
        var took = Stopwatch.GetElapsedTime(since);
        since = Stopwatch.GetTimestamp();
        await target.Restore(file);
        var restored = Stopwatch.GetElapsedTime(since);

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Farmers} farmers: backup from {from} {took.TotalSeconds:F2} s, {taken.Bytes} bytes "
                + $"({taken.Bytes / Farmers} a farmer); restore to {to} {restored.TotalSeconds:F2} s"));
        Assert.Equal(Farmers, taken.Counts["farmers"]);
        await using var after = await target.Open(Season.ClockAt(Season.Noon));
        Assert.Equal(Farmers, (await after.Members(41, Cancel)).Count);
        var last = await after.Begin(
            after.KeyOf(Season.Number(Farmers)), new SeenId("lake", "in"), Season.Noon, Cancel);
        Assert.Equal((1, true, Season.Number(Farmers)), (last.Version, last.Seen, last.Number));
    }

    private static async Task Fill(IStore store)
    {
        foreach (var some in Enumerable.Range(1, Farmers).Chunk(AtOnce))
            await Task.WhenAll(some.Select(async n => Assert.Equal(
                CommitOutcome.Committed, await store.Commit(Turn(store, n), Cancel))));
    }

    private static Commit Turn(IStore store, int n) => new()
    {
        Key = store.KeyOf(Season.Number(n)),
        Number = Season.Number(n),
        ExpectedVersion = 0,
        Seen = new SeenId("lake", "in"),
        At = Season.Noon,
        NextDue = Season.Noon + Duration.FromDays(3),
        Farmer = FarmerFormatTests.Full with { Subject = $"subject-{n}", Concern = null },
        Send =
        [
            new Outbound(
                $"subject-{n}-18", "lake", "Build your heap in 3 rounds of layers.", Priority.Reply, Season.Noon,
                Season.Noon + Duration.FromDays(1)),
        ],
    };
}
