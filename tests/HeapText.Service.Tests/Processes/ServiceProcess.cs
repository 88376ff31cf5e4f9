using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;

namespace HeapText.Service.Tests.Processes;

/// <summary>The real program in a process of its own, in practice mode on a free port.</summary>
internal sealed class ServiceProcess : IAsyncDisposable
{
    private readonly Process _process;

    private ServiceProcess(Process process, Uri url)
    {
        _process = process;
        Http = new HttpClient { BaseAddress = url, Timeout = TimeSpan.FromSeconds(20) };
    }

    public HttpClient Http { get; }

    /// <summary>What it wrote on standard error, by line.</summary>
    public IEnumerable<string> Errors { get; private init; } = [];

    public static async Task<ServiceProcess> Start(string folder, params string[] options)
    {
        var process = new Process
        {
            StartInfo = new ProcessStartInfo(
                Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "heaptext.exe" : "heaptext"),
                ["serve", "--urls", "http://127.0.0.1:0", "--data", folder, .. options])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            },
        };
        var errors = new ConcurrentQueue<string>();
        process.ErrorDataReceived += (_, said) => errors.Enqueue(said.Data ?? "");
        process.Start();
        process.BeginErrorReadLine();
        var line = await process.StandardOutput.ReadLineAsync(Token)
            ?? throw new InvalidOperationException("The service did not start.");
        return new ServiceProcess(process,
            new Uri(line.Split(' ').First(word => word.StartsWith("http", StringComparison.Ordinal))))
        {
            Errors = errors,
        };
    }

    /// <summary>Posts a text; null when the process died before it answered.</summary>
    public async Task<bool?> Text(string from, string id, string text = "HEAP")
    {
        try
        {
            using var answer = await Http.PostAsJsonAsync("/sms/practice", new { id, from, to = "4040", text }, Token);
            if (!answer.IsSuccessStatusCode) return null;
            return (await answer.Content.ReadFromJsonAsync<JsonElement>(Token)).GetProperty("duplicate").GetBoolean();
        }
        catch (Exception gone) when (gone is HttpRequestException or TaskCanceledException or JsonException)
        {
            return null;
        }
    }

    public async Task<List<string>> MessageIds(string to)
    {
        var messages = await Http.GetFromJsonAsync<List<JsonElement>>($"/practice/messages?to={to}", Token);
        return [.. messages!.Select(message => message.GetProperty("id").GetString()!)];
    }

    /// <summary>kill -9.</summary>
    public void Kill() => _process.Kill();

    /// <summary>Asks it to stop, and waits; the exit code.</summary>
    public async Task<int> Stop(TimeSpan atMost)
    {
        using var signal = Process.Start("sh", ["-c", $"kill -TERM {_process.Id}"]);
        await _process.WaitForExitAsync(Token).WaitAsync(atMost, Token);
        return _process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited) _process.Kill();
        await _process.WaitForExitAsync(CancellationToken.None);
        _process.Dispose();
        Http.Dispose();
    }

    public static string Phone(int number) => "+99920" + number.ToString("D6", CultureInfo.InvariantCulture);
}
