using System.Net.Http.Json;
using HeapText.Service.Tests.Fakes;
using HeapText.Store.Tests.Redis;

namespace HeapText.Service.Tests.Processes;

/// <summary>What outlasts a killed service: its data folder, and a server of its own where the records are on
/// one.</summary>
internal sealed class StoreHome : IAsyncDisposable
{
    public const string Embedded = "embedded";
    public const string Redis = "redis";

    private readonly TempFolder _folder = new();
    private readonly RedisServer? _server;
    private readonly string? _secret;

    private StoreHome(RedisServer? server, string? secret)
    {
        _server = server;
        _secret = secret;
    }

    /// <summary>An empty home.</summary>
    /// <param name="kind"><see cref="Embedded"/> or <see cref="Redis"/>.</param>
    /// <param name="secret">Store:Secret; null for that of practice mode.</param>
    public static async Task<StoreHome> Open(string kind, string? secret = null) =>
        new(kind == Redis ? await RedisServer.StartDurable() : null, secret);

    /// <summary>The server; null where there is none.</summary>
    public RedisServer? Server => _server;

    /// <summary>Names the store to a verb.</summary>
    public IReadOnlyList<string> Options => ["--data", _folder.Path, .. Settings];

    private IEnumerable<string> Settings
    {
        get
        {
            if (_server is not null) yield return $"--Store:Connection={_server.Connection}";
            if (_secret is not null) yield return $"--Store:Secret={_secret}";
        }
    }

    public Task<ServiceProcess> Start(bool fresh = false)
    {
        string[] options = fresh ? ["--fresh"] : [];
        return ServiceProcess.Start(_folder.Path, [.. options, .. Settings]);
    }

    /// <summary>Waits for what a killed process had taken for sending. The embedded store gives it back at the start;
    /// on a server, where others may be sending, the practice clock goes past its lease of 30 s.</summary>
    public async Task TakeOver(ServiceProcess service)
    {
        using var moved = await service.Http.PostAsJsonAsync(
            "/practice/clock", new { advance = _server is null ? "PT1S" : "PT31S" }, Token);
        moved.EnsureSuccessStatusCode();
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null) await _server.DisposeAsync();
        _folder.Dispose();
    }
}
