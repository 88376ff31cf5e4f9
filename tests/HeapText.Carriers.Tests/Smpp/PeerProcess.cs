using System.Diagnostics;
using System.Text.Json;

namespace HeapText.Carriers.Tests.Smpp;

/// <summary>A message centre in a process of its own, over a library nobody here wrote: peer/server.js.</summary>
internal sealed class PeerProcess : IAsyncDisposable
{
    private readonly Process _process;

    private PeerProcess(Process process, int port) => (_process, Port) = (process, port);

    public int Port { get; }

    /// <summary>Starts it.</summary>
    /// <param name="how">What it is to do, as JSON; see peer/server.js.</param>
    public static async Task<PeerProcess> Start(string how)
    {
        var folder = Path.Combine(Root(), "tests", "HeapText.Carriers.Tests", "Smpp", "peer");
        Assert.True(
            Directory.Exists(Path.Combine(folder, "node_modules", "smpp")),
            "The peer is not installed: run tests/run.sh, or npm ci --ignore-scripts in " + folder);
        var process = Process.Start(new ProcessStartInfo("node", ["server.js"])
        {
            WorkingDirectory = folder,
            Environment = { ["PEER"] = how },
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        var first = await process.StandardOutput.ReadLineAsync();
        return new PeerProcess(process, Read(first).GetProperty("port").GetInt32());
    }

    /// <summary>What it took, in order, and its counts.</summary>
    public async Task<(List<JsonElement> Taken, JsonElement Counts)> Report()
    {
        await _process.StandardInput.WriteLineAsync("report");
        await _process.StandardInput.FlushAsync();
        var taken = new List<JsonElement>();
        while (true)
        {
            var one = Read(await _process.StandardOutput.ReadLineAsync());
            if (one.TryGetProperty("submitted", out _)) return (taken, one);
            taken.Add(one);
        }
    }

    /// <summary>Delivers a phone's message over the connection that is bound; the status of the answer.</summary>
    public async Task<int> Deliver(string from, string text)
    {
        await _process.StandardInput.WriteLineAsync(JsonSerializer.Serialize(new { from, text }));
        await _process.StandardInput.FlushAsync();
        return Read(await _process.StandardOutput.ReadLineAsync()).GetProperty("status").GetInt32();
    }

    public async ValueTask DisposeAsync()
    {
        _process.StandardInput.Close();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    /// <summary>The repository's folder.</summary>
    public static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HeapText.sln"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }

    private static JsonElement Read(string? line) => JsonDocument.Parse(line ?? "{}").RootElement;
}
