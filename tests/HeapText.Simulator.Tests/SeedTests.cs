using HeapText.Dialog.Engine;
using HeapText.Simulator.Tests.Running;
using HeapText.Simulator.Tests.Store;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests;

/// <summary>Thousands of seasons in which everything goes wrong, each drawn from a seed.</summary>
public sealed class SeedTests
{
    private const int MostSeedsToCatch = 2_000;

    /// <summary>HEAPTEXT_SEED=N plays one seed and tells its shortest failure; HEAPTEXT_SEEDS=N plays so
    /// many.</summary>
    [Fact]
    public void Seeds_EverythingGoesWrong_NoRuleIsBroken()
    {
        var output = TestContext.Current.TestOutputHelper!;
        var only = SeedRun.Number("HEAPTEXT_SEED");
        var run = SeedRun.Play(only ?? 0, only is null ? SeedRun.Number("HEAPTEXT_SEEDS") ?? SeedRun.Short : 1);

        output.WriteLine(run.Figures);
        if (only is null) SeedRun.Keep(run.Figures);
        Assert.True(run.Failed is null, run.Failed is { } seed ? Failure.Of(seed).Story : "");
    }

    [Fact]
    public void Seed_PlayedTwice_GivesTheSameTraceByteForByte()
    {
        for (var seed = 0; seed < 40; seed++) Assert.Equal(TraceOf(seed), TraceOf(seed));
    }

    /// <summary>A rule that cannot be broken proves nothing: each way to be wrong is noticed, most within a hundred
    /// seeds.</summary>
    [Theory]
    [InlineData(Flaw.ForgetsSeen)]
    [InlineData(Flaw.DropsDue)]
    [InlineData(Flaw.ForgetsClaimed)]
    [InlineData(Flaw.RenamesRetries)]
    [InlineData(Flaw.LosesCommits)]
    [InlineData(Flaw.IgnoresVersions)]
    [InlineData(Flaw.LosesOrder)]
    [InlineData(Flaw.ForgetsTaken)]
    internal void Seeds_StoreIsWrong_ARuleIsBroken(Flaw flaw) => AssertCaught(flaw, same => same);

    [Theory]
    [InlineData(Mistake.WritesAtNight)]
    [InlineData(Mistake.WritesAfterStop)]
    [InlineData(Mistake.RemindsTwice)]
    [InlineData(Mistake.ForgetsToWake)]
    [InlineData(Mistake.RepeatsIds)]
    [InlineData(Mistake.KeepsSilent)]
    internal void Seeds_ConversationIsWrong_ARuleIsBroken(Mistake mistake) =>
        AssertCaught(Flaw.None, right => new WrongConversation(right, mistake));

    [Fact]
    public void FailingSeed_IsToldWithAShorterScenarioThatStillFails()
    {
        var seed = FirstCaught(Flaw.ForgetsSeen, same => same)!.Value;

        var failure = Failure.Of(seed, Flaw.ForgetsSeen);

        Assert.NotNull(Simulation.Play(failure.Scenario, Flaw.ForgetsSeen).Broken);
        Assert.True(failure.Scenario.Happenings.Count * 2 < ScenarioWriter.Of(seed).Happenings.Count);
        Assert.Contains($"HEAPTEXT_SEED={seed} ", failure.Story, StringComparison.Ordinal);
        Assert.EndsWith("had its effect twice", failure.Story.TrimEnd(), StringComparison.Ordinal);
    }

    private static void AssertCaught(Flaw flaw, Func<IConversation, IConversation> spoil)
    {
        var seed = FirstCaught(flaw, spoil);
        TestContext.Current.TestOutputHelper!.WriteLine($"caught by seed {seed}");
        Assert.NotNull(seed);
    }

    private static int? FirstCaught(Flaw flaw, Func<IConversation, IConversation> spoil) =>
        Enumerable.Range(0, MostSeedsToCatch).Select(seed => (int?)seed)
            .FirstOrDefault(seed => Simulation.Play(ScenarioWriter.Of(seed!.Value), flaw, spoil).Broken is not null);

    private static string TraceOf(int seed)
    {
        var trace = new Trace();
        Simulation.Play(ScenarioWriter.Of(seed), trace: trace);
        return string.Join('\n', trace.Lines);
    }
}
