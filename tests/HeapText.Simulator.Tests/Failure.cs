using HeapText.Dialog.Engine;
using HeapText.Simulator.Tests.Running;
using HeapText.Simulator.Tests.Store;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests;

/// <summary>A seed that breaks a rule, in the smallest scenario that still does.</summary>
/// <param name="Scenario">That scenario.</param>
/// <param name="Story">What to read: the rule, the command to play it again, the shortest trace.</param>
internal sealed record Failure(Scenario Scenario, string Story)
{
    public static Failure Of(int seed, Flaw flaw = Flaw.None, Func<IConversation, IConversation>? spoil = null)
    {
        var shortest = Shrinker.Shrink(
            ScenarioWriter.Of(seed), one => Simulation.Play(one, flaw, spoil).Broken is not null);
        var trace = new Trace();
        var outcome = Simulation.Play(shortest, flaw, spoil, trace);
        var story = $"""
            Seed {seed} breaks a rule: {outcome.Broken}
            Play it again: HEAPTEXT_SEED={seed} dotnet run --project tests/HeapText.Simulator.Tests
            Shortest trace found, {shortest.Happenings.Count} happenings:
            {string.Join('\n', trace.Lines)}
            """;
        return new Failure(shortest, story);
    }
}
