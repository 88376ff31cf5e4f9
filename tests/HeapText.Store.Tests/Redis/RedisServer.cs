using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace HeapText.Store.Tests.Redis;

/// <summary>A redis-server of our own, on a free loopback port, in a temporary folder.</summary>
public sealed class RedisServer : IAsyncDisposable
{
    private static readonly TimeSpan StartLimit = TimeSpan.FromSeconds(15);
    private readonly string[] _arguments;
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-redis-").FullName;
    private Process? _process;

    private RedisServer(string[] arguments) => _arguments = arguments;

    public int Port { get; } = FreePort();

    public string Connection => $"127.0.0.1:{Port}";

    /// <summary>One that keeps every write: appendonly, appendfsync always.</summary>
    public static Task<RedisServer> StartDurable(params string[] arguments) =>
        Start(["--appendonly", "yes", "--appendfsync", "always", .. arguments]);

    public static async Task<RedisServer> Start(params string[] arguments)
    {
        var server = new RedisServer(arguments);
        await server.StartAgain();
        return server;
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async Task StartAgain()
    {
        string[] place = ["--port", $"{Port}", "--bind", "127.0.0.1", "--dir", _folder, "--save", ""];
        var start = new ProcessStartInfo("redis-server", [.. place, .. _arguments]) { RedirectStandardOutput = true };
        try
        {
            _process = Process.Start(start)!;
        }
        catch (Win32Exception e)
        {
            throw new InvalidOperationException(
                "The tests of the Redis home need redis-server (7.0 or later) on the PATH, and it is not there.", e);
        }
        _process.OutputDataReceived += (_, _) => { };
        _process.BeginOutputReadLine();
        await Ready();
    }

    /// <summary>kill -9.</summary>
    public async Task Kill()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Sends STOP or CONT.</summary>
    public void Signal(string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", $"{_process!.Id}"]);
        kill.WaitForExit();
    }

    /// <summary>One command, for what the store itself never asks.</summary>
    public async Task<string> Ask(string command)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, Port);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(command + "\r\n"));
        var answer = new byte[64 * 1024];
        return Encoding.ASCII.GetString(answer, 0, await stream.ReadAsync(answer));
    }

    /// <summary>Whether a text stands in any file the server wrote.</summary>
    public bool WroteToDisk(string text) => Directory.EnumerateFiles(_folder, "*", SearchOption.AllDirectories)
        .Any(file => File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0);

    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false }) await Kill();
        _process?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task Ready()
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                if (await Ask("PING") is "+PONG\r\n") return;
            }
            catch (SocketException) when (since.Elapsed < StartLimit && !_process!.HasExited)
            {
                // not listening yet
            }
            if (since.Elapsed > StartLimit) throw new InvalidOperationException("redis-server did not start in time.");
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        }
    }
}
