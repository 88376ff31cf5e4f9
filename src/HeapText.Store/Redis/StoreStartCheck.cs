using System.Globalization;
using HeapText.Store.Numbers;
using Microsoft.Extensions.Logging;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Refuses a server that could lose or misread records, and says what to change.</summary>
internal static partial class StoreStartCheck
{
    /// <summary>The layout of keys this program knows.</summary>
    private const int LayoutVersion = 1;

    /// <summary>The layout's number, as it is written.</summary>
    public static string Current => LayoutVersion.ToString(CultureInfo.InvariantCulture);

    /// <summary>What <see cref="Keys.Layout"/> holds.</summary>
    public static string Mark(string layout, NumberVault vault) =>
        $"{layout} {Convert.ToHexStringLower(vault.Fingerprint)}";

    /// <summary>Checks every server that is written to.</summary>
    /// <exception cref="InvalidOperationException">One of them does not persist, evicts, or its cluster has
    /// gaps.</exception>
    public static async Task Durability(IConnectionMultiplexer connection, ILogger logger)
    {
        foreach (var server in connection.GetServers().Where(server => server.IsConnected && !server.IsReplica))
        {
            var settings = await Settings(server);
            var at = server.EndPoint.ToString();
            if (settings["appendonly"] != "yes" && settings["save"].Length == 0)
                throw new InvalidOperationException(
                    $"The server {at} keeps nothing on disk. Set 'appendonly yes' and 'appendfsync always' on it.");
            if (settings["maxmemory-policy"] != "noeviction")
                throw new InvalidOperationException(
                    $"The server {at} drops records when memory is full (maxmemory-policy "
                    + $"{settings["maxmemory-policy"]}). Set 'maxmemory-policy noeviction' on it.");
            if (settings["appendonly"] != "yes" || settings["appendfsync"] != "always") LogMayLose(logger, at);
            if (server.ServerType == ServerType.Cluster) await Slots(server);
        }
    }

    /// <summary>Checks that the records were laid out by this version, under this secret; marks an empty
    /// server.</summary>
    /// <exception cref="InvalidDataException">They were not.</exception>
    public static async Task Layout(IDatabase database, Keys keys, NumberVault vault)
    {
        var ours = Mark(Current, vault);
        await Guard.Do(() => database.StringSetAsync(keys.Layout, ours, when: When.NotExists), CancellationToken.None);
        var written = (await Guard.Do(() => database.StringGetAsync(keys.Layout), CancellationToken.None)).ToString();
        if (written == ours) return;
        if (written.StartsWith(Keys.Restoring, StringComparison.Ordinal))
            throw new InvalidDataException(
                "A backup was being put back into the store and the store is not whole. Run 'heaptext restore' again.");
        var version = int.Parse(written.Split(' ')[0], CultureInfo.InvariantCulture);
        throw new InvalidDataException(version > LayoutVersion
            ? $"The store has layout {version}; this version knows {LayoutVersion}. Install the newer version again."
            : "Store:Secret is not what this store was made with: its numbers could not be read. Set the old one.");
    }

    private static async Task<Dictionary<string, string>> Settings(IServer server)
    {
        var settings = new Dictionary<string, string>();
        foreach (var name in new[] { "appendonly", "appendfsync", "save", "maxmemory-policy" })
        {
            try
            {
                var pair = (string[])(await server.ExecuteAsync("CONFIG", "GET", name))!;
                settings[name] = pair.Length == 2 ? pair[1] : "";
            }
            catch (RedisServerException e)
            {
                throw new InvalidOperationException(
                    $"The server {server.EndPoint} does not let its settings be read, so nothing says that it keeps "
                    + "what it acknowledges. Allow 'CONFIG GET', or set Store:RequireDurableServer to false.", e);
            }
        }
        return settings;
    }

    private static async Task Slots(IServer server)
    {
        var state = (await server.ExecuteAsync("CLUSTER", "INFO")).ToString();
        if (state.Contains("cluster_state:ok", StringComparison.Ordinal)) return;
        throw new InvalidOperationException(
            $"The cluster of {server.EndPoint} does not serve all slots. Mend it ('redis-cli --cluster fix').");
    }

    [LoggerMessage(4101, LogLevel.Warning,
        "The server {Server} may lose the last of what it acknowledged: set 'appendonly yes', 'appendfsync always'")]
    private static partial void LogMayLose(ILogger logger, string? server);
}
