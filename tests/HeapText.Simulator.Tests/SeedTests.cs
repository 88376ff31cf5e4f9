using HeapText.Simulator.Tests.Running;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests;

/// <summary>Thousands of seasons in which everything goes wrong, each drawn from a seed.</summary>
public sealed class SeedTests
{
    /// <summary>HEAPTEXT_SEED=N plays one seed and tells its shortest failure; HEAPTEXT_SEEDS=N plays so many.</summary>
    [Fact]
    public void Seeds_EverythingGoesWrong_NoRuleIsBroken()
    {
        var output = TestContext.Current.TestOutputHelper!;
        var only = SeedRun.Number("HEAPTEXT_SEED");
        var run = SeedRun.Play(only ?? 0, only is null ? SeedRun.Number("HEAPTEXT_SEEDS") ?? SeedRun.Short : 1);

        output.WriteLine(run.Figures);
        SeedRun.Keep(run.Figures);
        Assert.True(run.Failed is null, run.Failed is { } seed ? Failure.Of(seed).Story : "");
    }

    [Fact]
    public void Seed_PlayedTwice_GivesTheSameTraceByteForByte()
    {
        for (var seed = 0; seed < 40; seed++) Assert.Equal(TraceOf(seed), TraceOf(seed));
    }

    private static string TraceOf(int seed)
    {
        var trace = new Trace();
        Simulation.Play(ScenarioWriter.Of(seed), trace: trace);
        return string.Join('\n', trace.Lines);
    }
}
