using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests.Running;

/// <summary>Makes a failing scenario smaller: leaves out whatever it still fails without.</summary>
internal static class Shrinker
{
    private const int MostRuns = 600;

    /// <summary>The smallest scenario found that still breaks a rule.</summary>
    public static Scenario Shrink(Scenario failing, Func<Scenario, bool> fails)
    {
        foreach (var farmer in failing.Happenings.OfType<Happening.Lives>().Select(lives => lives.Farmer).ToList())
        {
            var without = failing with { Happenings = [.. failing.Happenings.Where(one => FarmerOf(one) != farmer)] };
            if (fails(without)) failing = without;
        }
        var runs = 0;
        for (var size = failing.Happenings.Count / 2; size >= 1;)
        {
            var smaller = Without(failing, size).FirstOrDefault(one => ++runs <= MostRuns && fails(one));
            if (smaller is not null) failing = smaller;
            else size /= 2;
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
        return happenings.All(one => FarmerOf(one) is not { } farmer || there.Contains(farmer));
    }

    private static int? FarmerOf(Happening happening) => happening switch
    {
        Happening.Lives lives => lives.Farmer,
        Happening.Texts text => text.Farmer,
        Happening.Calls call => call.Farmer,
        Happening.Dials dials => dials.Farmer,
        _ => null,
    };
}
