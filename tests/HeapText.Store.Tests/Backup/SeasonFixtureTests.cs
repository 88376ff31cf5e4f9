using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Redis;
using HeapText.Store.Tests.Records;
using HeapText.Store.Tests.Redis;

namespace HeapText.Store.Tests.Backup;

/// <summary>A server's keys of each layout, and a backup of each format, that an earlier release wrote: the season of
/// <see cref="Season.Write"/>.</summary>
public sealed class SeasonFixtureTests
{
    private const string Keys = ".commands";
    private const string Whole = ".heaptext";

    private static readonly string Layout = $"layout-{StoreStartCheck.Current}";
    private static readonly string Format = $"format-{BackupHeader.Version}";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Open_ServerWithTheKeysOfEachRelease_HoldsTheSeason()
    {
        var now = await KeysOfNow();
        var files = FixtureFiles.Of("servers", Layout, Keys);
        if (FixtureFiles.Accepts && (files.Count == 0 || !Kinds(File.ReadLines(files[^1])).SetEquals(Kinds(now))))
            FixtureFiles.Add("servers", Layout, Keys, System.Text.Encoding.ASCII.GetBytes(string.Join('\n', now)));
        files = FixtureFiles.Of("servers", Layout, Keys);

        Assert.True(
            files.Count > 0 && Kinds(File.ReadLines(files[^1])).SetEquals(Kinds(now)),
            FixtureFiles.Missing("The layout of the server's keys"));
        foreach (var file in files)
        {
            await using var home = await Home.New(Home.Redis);
            await ServerDump.Read(home.Options.Connection, File.ReadLines(file));
            await AssertSeason(home);
        }
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_BackupOfEachRelease_HoldsTheSeason(string kind)
    {
        if (FixtureFiles.Accepts && FixtureFiles.Of("backups", Format, Whole) is [])
            FixtureFiles.Add("backups", Format, Whole, await BackupOfNow());
        var files = FixtureFiles.Of("backups", Format, Whole);

        Assert.True(files.Count > 0, FixtureFiles.Missing("The format of backups"));
        foreach (var file in files)
        {
            await using var home = await Home.New(kind);
            await home.Restore(file);
            await AssertSeason(home);
        }
    }

    private static HashSet<string> Kinds(IEnumerable<string> commands) => [.. commands.Select(ServerDump.KindOf)];

    private static async Task<List<string>> KeysOfNow()
    {
        await using var home = await Home.New(Home.Redis);
        await using (var store = await home.Open(Season.ClockAt(Season.Noon))) await Season.Write(store);
        return await ServerDump.Write(home.Options.Connection);
    }

    private static async Task<byte[]> BackupOfNow()
    {
        await using var home = await Home.New(Home.Embedded);
        await using (var store = await home.Open(Season.ClockAt(Season.Noon))) await Season.Write(store);
        var file = Path.Combine(home.Options.DataDirectory, "season.heaptext");
        await home.Take(file, Season.ClockAt(Season.Noon));
        return await File.ReadAllBytesAsync(file, Cancel);
    }

    private static async Task AssertSeason(Home home)
    {
        await using var store = await home.Open(Season.ClockAt(Season.Noon));
        Assert.Equal([41, 42], (await store.Groups(Cancel)).Select(group => group.Code));
        Assert.Equal("mbondo", Assert.Single(await store.OwnWords(Cancel)).Word);
        Assert.Equal(["did-2", "did-1", "did-0"], (await store.AuditTrail(9, Cancel)).Select(entry => entry.Action));
        Assert.Equal("s2-1", Assert.Single(await store.SetAside(9, Cancel)).Message.Id);
        Assert.Equal(Season.Number(3), Assert.Single(await store.Concerns(9, Cancel)).Number);
        Assert.Equal(3, (await store.Members(41, Cancel)).Count);
        var start = await store.Begin(
            store.KeyOf(Season.Number(1)), new SeenId("lake", "in-2"), Season.Noon, Cancel);
        Assert.Equal((2, true, "1 yes 2 no"), (start.Version, start.Seen, start.Answer!.Text));
        var sent = Assert.Single(await store.Sent(store.KeyOf(Season.Number(1)), Cancel));
        Assert.Equal((2, 1), (sent.Parts, sent.PartsDelivered));
        var receipt = new Receipt("lake", "r-2", DeliveryState.Delivered, Season.Noon);
        Assert.Equal(NoteOutcome.Noted, await store.Note(receipt, Season.Noon, Cancel));
        var hour = Season.Noon + NodaTime.Duration.FromHours(1);
        Assert.Equal(2, (await store.ClaimDue(hour, NodaTime.Duration.FromMinutes(1), 9, Cancel)).Count);
        var taken = await store.TakeNext(
            "lake", Priority.Notice, hour + hour.Minus(Season.Noon) * 5, NodaTime.Duration.FromMinutes(1), 9, Cancel);
        Assert.Equal(
            ["s1-3", "s2-3", "s3-1", "s4-1", "s5-1", "s6-1"], taken.Select(one => one.Message.Id).Order());
        Assert.Equal(Season.Number(4), taken.Single(one => one.Message.Id == "s4-1").To);
    }
}
