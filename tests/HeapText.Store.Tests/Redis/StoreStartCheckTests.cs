using HeapText.Dialog.Ports;

namespace HeapText.Store.Tests.Redis;

public sealed class StoreStartCheckTests
{
    [Fact]
    public async Task Open_ServerWithoutPersistence_IsRefusedWithTheFix() =>
        await Refused("appendonly yes");

    [Fact]
    public async Task Open_ServerThatEvicts_IsRefusedWithTheFix() =>
        await Refused("maxmemory-policy noeviction", "--appendonly", "yes", "--maxmemory-policy", "allkeys-lru");

    [Fact]
    public async Task Open_ServerThatHidesItsSettings_IsRefusedWithTheFix() =>
        await Refused(
            "CONFIG GET", "--appendonly", "yes", "--user", "default", "on", "nopass", "~*", "+@all", "-config");

    [Fact]
    public async Task Open_ClusterWithoutItsSlots_IsRefusedWithTheFix() =>
        await Refused(
            "redis-cli --cluster fix", "--appendonly", "yes", "--cluster-enabled", "yes",
            "--cluster-port", $"{RedisServer.FreePort()}");

    [Theory]
    [InlineData("--appendonly", "yes")]
    [InlineData("--save", "60 1")]
    public async Task Open_ServerThatPersists_IsAccepted(params string[] arguments)
    {
        await using var server = await RedisServer.Start(arguments);

        await using var store = await Open(server.Connection);

        Assert.True(await store.IsEmpty(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Open_BareServerOnRequest_IsAccepted()
    {
        await using var server = await RedisServer.Start();

        await using var store = await Open(server.Connection, requireDurable: false);

        Assert.True(await store.IsEmpty(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Open_NoServer_IsUnavailableWithinFiveSeconds()
    {
        var since = System.Diagnostics.Stopwatch.StartNew();

        await Assert.ThrowsAsync<StoreUnavailableException>(
            async () => await Open($"127.0.0.1:{RedisServer.FreePort()}"));

        Assert.True(since.Elapsed < TimeSpan.FromSeconds(5));
    }

    [Fact]
    public async Task Open_NoSecret_SaysHowToMakeOne()
    {
        var fault = await Assert.ThrowsAsync<ArgumentException>(
            async () => await StoreFactory.Open(new StoreOptions { Connection = "127.0.0.1" }));

        Assert.Contains("openssl rand -base64 32", fault.Message, StringComparison.Ordinal);
    }

    private static async Task Refused(string fix, params string[] arguments)
    {
        await using var server = await RedisServer.Start(arguments);

        var fault = await Assert.ThrowsAsync<InvalidOperationException>(async () => await Open(server.Connection));

        Assert.Contains(fix, fault.Message, StringComparison.Ordinal);
    }

    private static ValueTask<IStore> Open(string connection, bool requireDurable = true) =>
        StoreFactory.Open(new StoreOptions
        {
            Connection = connection,
            Secret = Convert.ToBase64String(new byte[32]),
            RequireDurableServer = requireDurable,
        });
}
