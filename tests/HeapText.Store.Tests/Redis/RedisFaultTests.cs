using System.Diagnostics;
using HeapText.Dialog.Ports;
using HeapText.Store.Redis;
using HeapText.Store.Tests.Contract;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace HeapText.Store.Tests.Redis;

/// <summary>What a server can do to us. Each test has a server of its own.</summary>
public sealed class RedisFaultTests : IAsyncLifetime
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private static readonly TimeSpan StallLimit = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BackLimit = TimeSpan.FromSeconds(10);
    private RedisServer _server = null!;
    private RedisStore _store = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _server = await RedisServer.StartDurable();
        _store = await Open();
    }

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        await _server.DisposeAsync();
    }

    [Fact]
    public async Task BeginAndCommit_ScriptsKnown_TakeOneRoundTripEach()
    {
        await Commit(1, 1);
        await _store.Begin(Key(1), null, Noon, Cancel);
        var profile = new StackExchange.Redis.Profiling.ProfilingSession();
        _store.Server.RegisterProfiler(() => profile);

        await _store.Begin(Key(1), new SeenId("sms", "in-2"), Noon, Cancel);
        Assert.Equal(["EVALSHA"], Commands(profile));
        await Commit(1, 2);
        Assert.Equal(["EVALSHA"], Commands(profile));
    }

    [Fact]
    public async Task Steps_ServerForgotTheScripts_SendsThemAgain()
    {
        await Commit(1, 1);
        await _server.Ask("SCRIPT FLUSH");

        Assert.Equal(CommitOutcome.Committed, await Commit(1, 2));
        Assert.Single(await Take());
    }

    [Fact]
    public async Task Steps_ServerStalled_AreUnavailableInTimeAndWellAgainSoon()
    {
        await Commit(1, 1);
        _server.Signal("STOP");
        var since = Stopwatch.StartNew();

        await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(1, 2));
        await Assert.ThrowsAsync<StoreUnavailableException>(Take);
        Assert.True(since.Elapsed < 2 * StallLimit, $"{since.Elapsed}");

        _server.Signal("CONT");
        await WellAgain();
        Assert.NotEqual(CommitOutcome.Conflict, await Commit(1, 2));
    }

    [Fact]
    public async Task Steps_ServerGone_AreUnavailableInTimeAndWellAgainSoon()
    {
        await Commit(1, 1);
        await _server.Kill();
        var since = Stopwatch.StartNew();

        await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(1, 2));
        Assert.True(since.Elapsed < StallLimit, $"{since.Elapsed}");

        await _server.StartAgain();
        await WellAgain();
        Assert.Equal(1, (await _store.Begin(Key(1), null, Noon, Cancel)).Version);
        Assert.Equal(CommitOutcome.Committed, await Commit(1, 2));
    }

    [Fact]
    public async Task Commit_MemoryFull_IsUnavailableWithNothingDoneWhileSendingGoesOn()
    {
        await Commit(1, 1);
        await Commit(1, 2);
        await _server.Ask("CONFIG SET maxmemory 1");

        await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(1, 3));
        await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(2, 1));
        var start = await _store.Begin(Key(1), new SeenId("sms", "in-3"), Noon, Cancel);
        Assert.Equal((2, false), (start.Version, start.Seen));

        await _store.Settle(Assert.Single(await Take()), new Settlement.Retry(Noon), Cancel);
        await _store.Settle(Assert.Single(await Take()), new Settlement.SetAside("refused"), Cancel);
        await _store.Settle(Assert.Single(await Take()), new Settlement.Sent([]), Cancel);
        await _server.Ask("CONFIG SET maxmemory 0");
        Assert.Equal(CommitOutcome.Committed, await Commit(1, 3));
    }

    [Fact]
    public async Task Kill_WhileCommitting_LosesNothingAcknowledged()
    {
        var acknowledged = new Acknowledged();
        var random = new Random(20260302);

        for (var round = 0; round < 5; round++)
        {
            var until = acknowledged.Total + random.Next(200, 3_000);
            var all = Task.WhenAll(
                Enumerable.Range(0, 64).Select(farmer => Task.Run(() => WriteOn(farmer, acknowledged), Cancel)));
            while (acknowledged.Total < until) await Task.Yield();
            await _server.Kill();
            await all;
            await _server.StartAgain();
            await WellAgain();
            await acknowledged.Check(_store, Cancel);
        }

        await acknowledged.CheckOutbox(_store, Cancel);
    }

    [Fact]
    public async Task TakeNext_OneNumberUnreadable_GivesTheOthers()
    {
        await Commit(1, 1);
        await Commit(2, 1);
        await _store.Server.GetDatabase().StringSetRangeAsync(new Keys(Keys.Prefix).Farmer(Key(1)), 9, "damage");

        Assert.Equal(Key(2), Assert.Single(await Take()).Key);
    }

    [Fact]
    public async Task Commit_MonthsOfMessages_SeenMarksStayFewAndExpire()
    {
        for (var day = 1; day <= 300; day++)
            await _store.Commit(Acknowledged.Turn(_store, 1, day) with { At = Noon + Duration.FromDays(day) }, Cancel);

        var database = _store.Server.GetDatabase();
        var seen = new Keys(Keys.Prefix).Seen(Key(1));
        Assert.InRange(await database.SortedSetLengthAsync(seen), 7, 9);
        Assert.InRange((await database.KeyTimeToLiveAsync(seen))!.Value.TotalDays, 7.5, 8);
    }

    [Fact]
    public async Task Files_AfterEveryKindOfWrite_HoldNoNumber()
    {
        Assert.True(Msisdn.TryParse("+999123456789", out var number));

        await Privacy.WriteEverything(_store, number, Cancel);

        Assert.True(_server.WroteToDisk("text of a"));
        Assert.False(_server.WroteToDisk("123456789"));
    }

    [Fact]
    public async Task Open_AnotherSecret_IsRefused()
    {
        var other = new StoreOptions { Connection = _server.Connection, Secret = new string('A', 42) + "E=" };

        var fault = await Assert.ThrowsAsync<InvalidDataException>(async () => await StoreFactory.Open(other));

        Assert.Contains("Store:Secret", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_NewerLayout_IsRefused()
    {
        await _store.Server.GetDatabase().StringSetAsync(new Keys(Keys.Prefix).Layout, "2 00");

        var fault = await Assert.ThrowsAsync<InvalidDataException>(async () => await Open());

        Assert.Contains("newer version", fault.Message, StringComparison.Ordinal);
    }

    private static List<string> Commands(StackExchange.Redis.Profiling.ProfilingSession profile) =>
        [.. profile.FinishProfiling().Select(command => command.Command)];

    private ValueTask<RedisStore> Open() => RedisStore.Open(
        new StoreOptions { Connection = _server.Connection }, RedisStoreContract.Vault, NullLogger.Instance,
        TimeProvider.System);

    private FarmerKey Key(int farmer) => _store.KeyOf(Acknowledged.Number(farmer));

    private Task<CommitOutcome> Commit(int farmer, long version) =>
        _store.Commit(Acknowledged.Turn(_store, farmer, version), Cancel).AsTask();

    private Task<IReadOnlyList<Sending>> Take() =>
        _store.TakeNext("sms", Priority.Notice, Noon, Duration.FromMinutes(1), 10, Cancel).AsTask();

    private async Task WellAgain()
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await _store.IsEmpty(Cancel);
                return;
            }
            catch (StoreUnavailableException) when (since.Elapsed < BackLimit)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, Cancel);
            }
        }
    }

    private async Task WriteOn(int farmer, Acknowledged acknowledged)
    {
        try
        {
            for (var version = (await _store.Begin(Key(farmer), null, Noon, Cancel)).Version + 1; ; version++)
            {
                Assert.Equal(CommitOutcome.Committed, await Commit(farmer, version));
                acknowledged.Note(farmer, version);
            }
        }
        catch (StoreUnavailableException)
        {
            // the server was killed
        }
    }
}
