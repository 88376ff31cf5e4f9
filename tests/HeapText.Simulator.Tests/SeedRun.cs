using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using HeapText.Simulator.Tests.Running;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests;

/// <summary>Plays many seeds, on all cores, and adds up what was met.</summary>
/// <param name="Failed">The lowest seed that broke a rule; null when none did.</param>
/// <param name="Figures">What was played.</param>
internal sealed record SeedRun(int? Failed, string Figures)
{
    /// <summary>Seeds of the short form.</summary>
    public const int Short = 10_000;

    public static SeedRun Play(int first, int count)
    {
        var watch = Stopwatch.StartNew();
        var outcomes = new ConcurrentDictionary<int, Outcome>();
        var next = first - 1;
        var threads = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(() =>
        {
            while (Interlocked.Increment(ref next) is var seed && seed < first + count)
                outcomes[seed] = Simulation.Play(ScenarioWriter.Of(seed));
        })).ToList();
        foreach (var thread in threads) thread.Start();
        foreach (var thread in threads) thread.Join();
        var failed = outcomes.Where(one => one.Value.Broken is not null).Select(one => (int?)one.Key).Min();
        return new SeedRun(failed, Tell(outcomes, watch.Elapsed));
    }

    /// <summary>Keeps the figures where the other figures of tests are.</summary>
    public static void Keep(string figures)
    {
        var folder = Path.Combine(Villages.Root, "artifacts", "reliability");
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "simulator.txt"), figures);
    }

    public static int? Number(string variable) =>
        Environment.GetEnvironmentVariable(variable) is { } text
            ? int.Parse(text, CultureInfo.InvariantCulture)
            : null;

    private static string Tell(IReadOnlyDictionary<int, Outcome> played, TimeSpan took)
    {
        var outcomes = played.Values.ToList();
        var text = new StringBuilder();
        void Line(string name, object figure) =>
            text.AppendLine(CultureInfo.InvariantCulture, $"{name,-40} {figure,12:N0}");
        Line("seeds", outcomes.Count);
        Line("seeds that broke a rule", outcomes.Count(one => one.Broken is not null));
        Line("steps", outcomes.Sum(one => (long)one.Steps));
        Line("messages sent", outcomes.Sum(one => (long)one.Messages));
        Line("reminders sent after a report", outcomes.Sum(one => (long)one.Overtaken));
        Line("days simulated", outcomes.Sum(one => one.Elapsed / TimeSpan.TicksPerDay));
        Line("seconds taken", (long)took.TotalSeconds);
        var met = outcomes.SelectMany(one => one.Faults).GroupBy(fault => fault.Key)
            .OrderBy(fault => fault.Key, StringComparer.Ordinal);
        foreach (var fault in met) Line(fault.Key, fault.Sum(one => (long)one.Value));
        foreach (var (seed, outcome) in played.OrderBy(one => one.Key))
            if (outcome.Broken is { } rule) Line($"broken by seed {seed}", rule.Split('\n')[0]);
        return text.ToString();
    }
}
