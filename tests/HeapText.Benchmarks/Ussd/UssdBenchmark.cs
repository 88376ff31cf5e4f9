using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Runtime.InteropServices;
using System.Text.Json;
using HeapText.Benchmarks.Hook;

namespace HeapText.Benchmarks.Ussd;

/// <summary>How long a step on a dialled screen waits for its answer, beside a bare endpoint that only parses it.</summary>
internal static class UssdBenchmark
{
    private const int Rounds = 3;

    // Joins, picks a stock by role, reads some of the recipe, builds.
    private static readonly string[] Session =
    [
        "", "english", "41", "#", "1", "#", "1", "1", "20", "1", "2", "1", "5", "1", "3", "1", "14", "1", "0", "#", "#", "*",
        "menu", "2", "#", "2",
    ];

    private static int _farmers;

    public static async Task Run(TimeSpan round, int connections)
    {
        await using var subjects = await Subjects.Open();
        (string Name, Uri Url)[] measures =
        [
            ("hook: parse, decide, commit, answer", subjects.UssdUrl), ("bare endpoint: parse only", subjects.BareUssdUrl),
        ];
        foreach (var (_, url) in measures) await Waits(url, round, connections); // warm-up
        var waits = measures.ToDictionary(m => m.Name, _ => new List<double>());
        for (var i = 0; i < Rounds; i++)
            foreach (var (name, url) in measures) waits[name].AddRange(await Waits(url, round, connections));
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
                var from = string.Create(CultureInfo.InvariantCulture, $"+9995{Interlocked.Increment(ref _farmers):D8}");
                for (var step = 0; step < Session.Length && clock.Elapsed < time; step++)
                    own.Add(await Wait(client, url, new { session = from, from, code = "*384#", input = Session[step], step }));
            }
            return own;
        })));
        return waits.SelectMany(own => own);
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
                $"| {name} | {sorted.Count} | {At(sorted, 0.5):0.00} | {At(sorted, 0.99):0.00} | {At(sorted, 1):0.0} "
                + $"| {At(sorted, 0.5) / bare:0.0} |"));
        }
    }

    private static double At(List<double> waits, double share)
    {
        waits.Sort();
        return waits[(int)((waits.Count - 1) * share)];
    }
}
