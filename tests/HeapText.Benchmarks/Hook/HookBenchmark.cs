using System.Globalization;
using System.Runtime.InteropServices;

namespace HeapText.Benchmarks.Hook;

/// <summary>Messages a second through the durable hook, beside its controls, measured in turn in one run.</summary>
internal static class HookBenchmark
{
    private const int Rounds = 3;

    public static async Task Run(TimeSpan round, int connections)
    {
        await using var subjects = await Subjects.Open();
        (string Name, Func<Task<double>> Measure)[] measures =
        [
            ("hook: parse, decide, commit", () => Load.Post(subjects.HookUrl, round, connections)),
            ("bare endpoint: parse only", () => Load.Post(subjects.BareUrl, round, connections)),
            ("bare endpoint: parse, the same commit", () => Load.Post(subjects.BareCommitUrl, round, connections)),
            ("store: the same commit alone", () => Load.Call(subjects.CommitOnce, round, connections)),
        ];
        foreach (var (_, measure) in measures) await measure(); // warm-up

        var results = measures.ToDictionary(m => m.Name, _ => new List<double>());
        for (var i = 0; i < Rounds; i++)
            foreach (var (name, measure) in measures) results[name].Add(await measure());
        Print(measures.Select(m => m.Name), results, round, connections);
    }

    private static void Print(
        IEnumerable<string> names, Dictionary<string, List<double>> results, TimeSpan round, int connections)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{RuntimeInformation.OSDescription}, {Environment.ProcessorCount} cores, "
            + $"{RuntimeInformation.FrameworkDescription}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{connections} connections, {Rounds} rounds of {round.TotalSeconds} s each, in turn; median"));
        var hook = Median(results[names.First()]);
        Console.WriteLine("| measured | messages a second | hook / this |\n| --- | --- | --- |");
        foreach (var name in names)
        {
            var rate = Median(results[name]);
            Console.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"| {name} | {rate:0} | {hook / rate:0.00} |"));
        }
    }

    private static double Median(List<double> rates) => rates.Order().ElementAt(rates.Count / 2);
}
