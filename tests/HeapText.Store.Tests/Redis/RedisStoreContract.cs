using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Redis;
using HeapText.Store.Tests.Contract;
using Microsoft.Extensions.Logging.Abstractions;

namespace HeapText.Store.Tests.Redis;

/// <summary>The contract on a server; each test has its own key prefix.</summary>
public abstract class RedisStoreContract(string connection) : StoreContract
{
    private static int _tests;
    private readonly string _prefix = $"t{Interlocked.Increment(ref _tests)}";

    internal static NumberVault Vault { get; } = new(new byte[NumberVault.SecretLength]);

    protected override async ValueTask<IStore> Open() => await RedisStore.Open(
        new StoreOptions { Connection = connection }, Vault, NullLogger.Instance, Clock, _prefix);

    protected override ValueTask Discard() => ValueTask.CompletedTask;
}

/// <summary>A single server.</summary>
public sealed class RedisSingleTests(SingleServer server)
    : RedisStoreContract(server.Server.Connection), IClassFixture<SingleServer>;

/// <summary>A cluster of three.</summary>
public sealed class RedisClusterTests(ClusterOfThree cluster)
    : RedisStoreContract(cluster.Connection), IClassFixture<ClusterOfThree>;

/// <summary>One durable server for the tests of a class.</summary>
public sealed class SingleServer : IAsyncLifetime
{
    public RedisServer Server { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Server = await RedisServer.StartDurable();

    public ValueTask DisposeAsync() => Server.DisposeAsync();
}

/// <summary>Three durable servers that share the slots.</summary>
public sealed class ClusterOfThree : IAsyncLifetime
{
    private static readonly string[] Slots = ["0 5460", "5461 10922", "10923 16383"];
    private readonly List<RedisServer> _servers = [];

    public string Connection => string.Join(',', _servers.Select(server => server.Connection));

    public async ValueTask InitializeAsync()
    {
        var buses = new List<int>();
        foreach (var slots in Slots)
        {
            buses.Add(RedisServer.FreePort());
            _servers.Add(await RedisServer.StartDurable("--cluster-enabled", "yes", "--cluster-port", $"{buses[^1]}"));
            await _servers[^1].Ask($"CLUSTER ADDSLOTSRANGE {slots}");
        }
        for (var i = 1; i < _servers.Count; i++)
            await _servers[0].Ask($"CLUSTER MEET 127.0.0.1 {_servers[i].Port} {buses[i]}");
        foreach (var server in _servers)
        {
            while (!await IsWhole(server)) await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var server in _servers) await server.DisposeAsync();
    }

    private static async Task<bool> IsWhole(RedisServer server)
    {
        var info = await server.Ask("CLUSTER INFO");
        return info.Contains("cluster_state:ok", StringComparison.Ordinal)
            && info.Contains("cluster_known_nodes:3", StringComparison.Ordinal);
    }
}
