using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using HeapText.Carriers.Smpp;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Benchmarks.Smpp;

/// <summary>Messages a second through an SMPP line, beside a bare loop over the same sockets, in turn in one
/// run.</summary>
internal static class SmppBenchmark
{
    private const int Rounds = 3;
    private const string Text =
        "Day 3. Push a stick into the heap, wait a little, then feel it. Reply hot, warm or cold.";

    public static async Task Run(TimeSpan round, int window)
    {
        using var centre = new BareCentre();
        var options = new SmppLineOptions
        {
            Name = "lake",
            From = "3344",
            Host = "127.0.0.1",
            Port = centre.Port,
            Tls = false,
            SystemId = "heap",
            Window = window,
        };
        await using var services = Services(options);
        var link = services.GetRequiredService<IHostedService>();
        await link.StartAsync(CancellationToken.None);
        var line = services.GetRequiredService<ICarrier>();
        if (!Msisdn.TryParse("+256700000001", out var to)) throw new UnreachableException();
        var message = new Outbound(
            "s-1", "lake", Text, Priority.Reply, Instant.MinValue,
            TimeProvider.System.GetUtcNow().ToInstant() + Duration.FromHours(1));
        while (await line.Send(message, to, CancellationToken.None) is not SendOutcome.Taken)
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);

        (List<double> Line, List<double> Bare) rates = ([], []);
        for (var i = 0; i <= Rounds; i++)
        {
            var bare = await BareLoop.Submit(centre.Port, options, message, to, round, window);
            var ours = await Submit(line, message, to, round, window);
            if (i == 0) continue; // warm-up
            rates.Bare.Add(bare);
            rates.Line.Add(ours);
        }

        await link.StopAsync(CancellationToken.None);
        Print(Median(rates.Line), Median(rates.Bare), round, window);
    }

    private static ServiceProvider Services(SmppLineOptions options) => new ServiceCollection()
        .AddLogging(logging => logging.SetMinimumLevel(LogLevel.None))
        .AddSingleton(TimeProvider.System)
        .AddSingleton<IReceiver, NoReceiver>()
        .AddSmppLines([options])
        .BuildServiceProvider();

    /// <summary>Texts of twice as many farmers as the window holds, each waiting for its answer; answers a
    /// second.</summary>
    private static async Task<double> Submit(
        ICarrier line, Outbound message, Msisdn to, TimeSpan time, int window)
    {
        var clock = Stopwatch.StartNew();
        var counts = await Task.WhenAll(Enumerable.Range(0, 2 * window).Select(_ => Task.Run(async () =>
        {
            var taken = 0L;
            while (clock.Elapsed < time)
            {
                if (await line.Send(message, to, CancellationToken.None) is not SendOutcome.Taken)
                    throw new InvalidOperationException("A message was not taken.");
                taken++;
            }

            return taken;
        })));
        return counts.Sum() / clock.Elapsed.TotalSeconds;
    }

    private static void Print(double line, double bare, TimeSpan round, int window)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{RuntimeInformation.OSDescription}, {Environment.ProcessorCount} cores, "
            + $"{RuntimeInformation.FrameworkDescription}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"window of {window}, {Rounds} rounds of {round.TotalSeconds} s each, in turn; median"));
        Console.WriteLine("| measured | submit_sm a second | line / this |\n| --- | --- | --- |");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| line | {line:0} | 1.00 |"));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"| bare loop, formed beforehand | {bare:0} | {line / bare:0.00} |"));
    }

    private static double Median(List<double> rates) => rates.Order().ElementAt(rates.Count / 2);

    /// <summary>The bare centre delivers nothing.</summary>
    private sealed class NoReceiver : IReceiver
    {
        public Task<bool> Hear(Inbound message, CancellationToken cancel) => throw new UnreachableException();

        public Task<(Screen Screen, bool Duplicate)> Dial(Dialled step, CancellationToken cancel) =>
            throw new UnreachableException();

        public Task<bool> Ring(MissedCall call, CancellationToken cancel) => throw new UnreachableException();

        public Task<NoteOutcome> Note(Receipt receipt, CancellationToken cancel) => throw new UnreachableException();
    }
}
