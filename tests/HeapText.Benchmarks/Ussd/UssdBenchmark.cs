using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Runtime.InteropServices;
using System.Text.Json;
using HeapText.Benchmarks.Hook;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime.Extensions;

namespace HeapText.Benchmarks.Ussd;

/// <summary>How long a step on a dialled screen waits for its answer, beside a bare endpoint that only parses
/// it.</summary>
internal static class UssdBenchmark
{
    private const int Rounds = 3;

    // Joins, picks a stock by role, reads some of the recipe, builds.
    private static readonly string[] Session =
    [
        "", "english", "41", "#", "1", "#", "1", "1", "20", "1", "2", "1", "5", "1", "3", "1", "14", "1", "0", "#", "#",
        "*", "menu", "2", "#", "2",
    ];

    private static int _farmers;

    public static async Task Run(TimeSpan round, int connections)
    {
        await using var subjects = await Subjects.Open();
        (string Name, Func<Task<IEnumerable<double>>> Measure)[] measures =
        [
            ("hook: parse, decide, commit, answer", () => Waits(subjects.UssdUrl, round, connections)),
            ("deciding alone", () => Task.FromResult<IEnumerable<double>>(Decisions(subjects.Conversation, round))),
            ("bare endpoint: parse only", () => Waits(subjects.BareUssdUrl, round, connections)),
        ];
        foreach (var (_, measure) in measures) await measure(); // warm-up
        var waits = measures.ToDictionary(m => m.Name, _ => new List<double>());
        for (var i = 0; i < Rounds; i++)
            foreach (var (name, measure) in measures) waits[name].AddRange(await measure());
        Print(measures.Select(m => m.Name), waits, round, connections);
    }

    /// <summary>Milliseconds each step waited, from many phones at once.</summary>
    private static async Task<IEnumerable<double>> Waits(Uri url, TimeSpan time, int connections)
    {
        using var handler = new SocketsHttpHandler { MaxConnectionsPerServer = connections };
        using var client = new HttpClient(handler);
        var clock = Stopwatch.StartNew();
        var waits = await Task.WhenAll(Enumerable.Range(0, connections).Select(_ => Task.Run(async () =>
        {
            List<double> own = [];
            while (clock.Elapsed < time)
            {
                var farmer = Interlocked.Increment(ref _farmers);
                var from = string.Create(CultureInfo.InvariantCulture, $"+9995{farmer:D8}");
                for (var step = 0; step < Session.Length && clock.Elapsed < time; step++)
                    own.Add(await Wait(
                        client, url, new { session = from, from, code = "*384#", input = Session[step], step }));
            }
            return own;
        })));
        return waits.SelectMany(own => own);
    }

    /// <summary>Milliseconds each step takes without web server and store, one after the other.</summary>
    private static List<double> Decisions(Conversation conversation, TimeSpan time)
    {
        List<double> waits = [];
        if (!Msisdn.TryParse("+99910000001", out var number)) throw new InvalidOperationException("no number");
        var now = TimeProvider.System.GetUtcNow().ToInstant();
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < time;)
        {
            Farmer? farmer = null;
            for (var step = 0; step < Session.Length; step++)
            {
                var dialled = new Dialled("a", step, "practice", number, Session[step]);
                var start = Stopwatch.GetTimestamp();
                farmer = conversation.Dial(farmer, "bench", dialled, now).Farmer;
                waits.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }
        return waits;
    }

    private static async Task<double> Wait(HttpClient client, Uri url, object step)
    {
        using var body = new ByteArrayContent(JsonSerializer.SerializeToUtf8Bytes(step));
        body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        var start = Stopwatch.GetTimestamp();
        using var answer = await client.PostAsync(url, body);
        answer.EnsureSuccessStatusCode();
        await answer.Content.ReadAsByteArrayAsync();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static void Print(
        IEnumerable<string> names, Dictionary<string, List<double>> waits, TimeSpan round, int connections)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{RuntimeInformation.OSDescription}, {Environment.ProcessorCount} cores, "
            + $"{RuntimeInformation.FrameworkDescription}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{connections} phones at once, {Rounds} rounds of {round.TotalSeconds} s each, in turn; milliseconds"));
        Console.WriteLine("| measured | steps | median | 99 of 100 within | most | median / bare |\n"
            + "| --- | --- | --- | --- | --- | --- |");
        var bare = At(waits[names.Last()], 0.5);
        foreach (var name in names)
        {
            var sorted = waits[name];
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {sorted.Count} | {At(sorted, 0.5):0.000} | {At(sorted, 0.99):0.00} | {At(sorted, 1):0.0} "
                + $"| {At(sorted, 0.5) / bare:0.0} |"));
        }
    }

    private static double At(List<double> waits, double share)
    {
        waits.Sort();
        return waits[(int)((waits.Count - 1) * share)];
    }
}
