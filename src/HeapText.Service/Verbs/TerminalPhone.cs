using System.Globalization;
using System.Security.Cryptography;
using HeapText.Dialog.Ports;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Service.Verbs;

/// <summary>A basic phone in the terminal: each line typed is a text, and a few words move the clock.</summary>
internal sealed class TerminalPhone(
    PracticeClient service, Msisdn number, string? firstText, TextReader input, TextWriter output)
{
    private const string Help = """
        Each line you type is sent as a text. These dial for screens, ring, move the practice clock or leave:
          :dial  screens instead of texts, until they end or :hangup     :ring  a missed call
          :next  to the next reminder     :day  one day on     :week  one week on     :quit
        """;

    private const int MostWakes = 100;
    private static readonly Duration AnswerWait = Duration.FromSeconds(2);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(50);
    private readonly string _run = RandomNumberGenerator.GetHexString(12, lowercase: true);
    private DateTimeZone _zone = DateTimeZone.Utc;
    private long _last;
    private int _sent;
    private int _dialled;
    private int _step;
    private bool _isDialled;

    /// <summary>Runs until the input ends or <c>:quit</c>.</summary>
    public async Task Run(CancellationToken cancel)
    {
        _zone = await service.Zone(cancel);
        await output.WriteLineAsync($"Phone {number.Value}. {Help}");
        await ShowNew(cancel);
        for (var line = firstText ?? await ReadLine(cancel); line is not null && line.Trim() != ":quit";
            line = await ReadLine(cancel))
        {
            try
            {
                await Do(line.Trim(), cancel);
            }
            catch (HttpRequestException refused) when (refused.StatusCode is not null)
            {
                await output.WriteLineAsync($"Not done: {refused.Message}");
            }
        }
    }

    private async Task<string?> ReadLine(CancellationToken cancel)
    {
        await output.WriteAsync(_isDialled ? "% " : "> ");
        await output.FlushAsync(cancel);
        return await input.ReadLineAsync(cancel);
    }

    private async Task Do(string line, CancellationToken cancel)
    {
        switch (line)
        {
            case "" when !_isDialled:
                await ShowNew(cancel);
                break;
            case ":next":
                await Next(cancel);
                break;
            case ":day":
                await Move(Duration.FromDays(1), cancel);
                break;
            case ":week":
                await Move(Duration.FromDays(7), cancel);
                break;
            case ":dial":
                (_dialled, _step) = (_dialled + 1, 0);
                await Enter("", cancel);
                break;
            case ":ring":
                await SendAndWait(id => service.Ring(id, number, cancel), cancel);
                break;
            case ":hangup":
                _isDialled = false;
                await ShowNew(cancel);
                break;
            case [':', ..]:
                await output.WriteLineAsync(Help);
                break;
            case var entry when _isDialled:
                await Enter(entry, cancel);
                break;
            default:
                await SendAndWait(id => service.Send(id, number, line, cancel), cancel);
                break;
        }
    }

    // Other phones wake in between, and not every wake has something to say.
    private async Task Next(CancellationToken cancel)
    {
        for (var wake = 0; wake < MostWakes; wake++)
        {
            if (await service.UntilNext(cancel) is not { } wait) break;
            var now = await service.Advance(wait, cancel);
            if (!await ShowNew(cancel)) continue;
            await output.WriteLineAsync($"It is now {Show(now)}.");
            return;
        }

        await output.WriteLineAsync("Nothing is waiting for this phone.");
    }

    private async Task Move(Duration by, CancellationToken cancel)
    {
        var now = await service.Advance(by, cancel);
        await output.WriteLineAsync($"It is now {Show(now)}.");
        await ShowNew(cancel);
    }

    private async Task Enter(string input, CancellationToken cancel)
    {
        var session = string.Create(CultureInfo.InvariantCulture, $"terminal-{_run}-{_dialled}");
        var screen = await service.Dial(session, _step + 1, number, input, cancel);
        _step++;
        _isDialled = screen.Open;
        await output.WriteLineAsync("| " + screen.Text.ReplaceLineEndings("\n| "));
        if (!screen.Open) await ShowNew(cancel);
    }

    private async Task SendAndWait(Func<string, Task> send, CancellationToken cancel)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"terminal-{_run}-{++_sent}");
        await send(id);
        var start = TimeProvider.System.GetTimestamp();
        while (!await ShowNew(cancel))
        {
            if (Duration.FromTimeSpan(TimeProvider.System.GetElapsedTime(start)) > AnswerWait)
            {
                await output.WriteLineAsync("No answer.");
                return;
            }

            await Task.Delay(Look, TimeProvider.System, cancel);
        }
    }

    private async Task<bool> ShowNew(CancellationToken cancel)
    {
        var news = await service.Messages(number, _last, cancel);
        foreach (var message in news)
        {
            _last = message.N;
            var parts = message.Segments == 1 ? "1 text" : $"{message.Segments} texts";
            await output.WriteLineAsync($"[{Show(InstantPattern.ExtendedIso.Parse(message.At).Value)}, {parts}]");
            await output.WriteLineAsync("  " + message.Text.ReplaceLineEndings("\n  "));
        }

        return news.Count > 0;
    }

    private string Show(Instant at) => at.InZone(_zone).ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture);
}
