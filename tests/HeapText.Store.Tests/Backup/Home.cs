using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Tests.Redis;

namespace HeapText.Store.Tests.Backup;

/// <summary>A store that a backup comes from or goes to.</summary>
internal sealed class Home : IAsyncDisposable
{
    public const string Embedded = "embedded";
    public const string Redis = "redis";
    public const string Cluster = "cluster";
    public static readonly string Secret = Convert.ToBase64String("a secret of thirty-two bytes ..."u8);
    private readonly IAsyncDisposable? _server;

    private Home(StoreOptions options, IAsyncDisposable? server)
    {
        Options = options;
        _server = server;
    }

    public StoreOptions Options { get; }

    public string DatabaseFile => Path.Combine(Options.DataDirectory, "heaptext.db");

    public static async Task<Home> New(string kind)
    {
        var folder = Directory.CreateTempSubdirectory("heaptext-home-").FullName;
        var (server, connection) = kind switch
        {
            Redis => await Single(),
            Cluster => await Three(),
            _ => (null, ""),
        };
        return new Home(
            new StoreOptions { DataDirectory = folder, Secret = Secret, Connection = connection }, server);
    }

    public ValueTask<IStore> Open(TimeProvider clock) => StoreFactory.Open(Options, time: clock);

    public Task<BackupSummary> Take(string file, TimeProvider clock) =>
        StoreBackup.Take(Options, file, clock, farmers: null, TestContext.Current.CancellationToken);

    public Task<BackupSummary> Restore(string file, bool replace = false) => StoreBackup.Restore(
        Options, file, replace, TimeProvider.System, farmers: null, TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        if (_server is not null) await _server.DisposeAsync();
        Directory.Delete(Options.DataDirectory, recursive: true);
    }

    private static async Task<(IAsyncDisposable?, string)> Single()
    {
        var server = await RedisServer.StartDurable();
        return (server, server.Connection);
    }

    private static async Task<(IAsyncDisposable?, string)> Three()
    {
        var servers = new ClusterOfThree();
        await servers.InitializeAsync();
        return (servers, servers.Connection);
    }
}
