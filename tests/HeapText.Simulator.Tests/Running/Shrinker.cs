using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests.Running;

/// <summary>Makes a failing scenario smaller: leaves out whatever it still fails without.</summary>
internal static class Shrinker
{
    private const int MostRuns = 600;

    /// <summary>The smallest scenario found that still breaks a rule.</summary>
    public static Scenario Shrink(Scenario failing, Func<Scenario, bool> fails)
    {
        var runs = 0;
        for (var size = failing.Happenings.Count / 2; size >= 1;)
        {
            var smaller = Without(failing, size).FirstOrDefault(one => ++runs <= MostRuns && fails(one));
            if (smaller is not null) failing = smaller;
            else size = size > 1 ? size / 2 : 0;
            if (smaller is not null) size = Math.Clamp(size, 1, Math.Max(1, failing.Happenings.Count));
        }
        return failing;
    }

    /// <summary>The scenario without so many happenings in a row, from the last ones on.</summary>
    private static IEnumerable<Scenario> Without(Scenario scenario, int size)
    {
        var all = scenario.Happenings;
        for (var end = all.Count; end > 0; end -= size)
        {
            var from = Math.Max(0, end - size);
            List<Happening> rest = [.. all.Take(from), .. all.Skip(end)];
            if (IsWhole(rest)) yield return scenario with { Happenings = rest };
        }
    }

    /// <summary>True when nobody texts who is not there.</summary>
    private static bool IsWhole(IReadOnlyList<Happening> happenings)
    {
        var there = happenings.OfType<Happening.Lives>().Select(lives => lives.Farmer).ToHashSet();
        return happenings.All(one => one switch
        {
            Happening.Texts text => there.Contains(text.Farmer),
            Happening.Calls call => there.Contains(call.Farmer),
            Happening.Dials dials => there.Contains(dials.Farmer),
            _ => true,
        });
    }
}
