using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Mixing;

/// <summary>Mass balance of a mix: mass, carbon, nitrogen, moisture, water to add.</summary>
public static class MixSolver
{
    /// <summary>Mixes parts, each by the table or by the figures given.</summary>
    /// <param name="problem">Parts and the moisture sought.</param>
    /// <returns>The mix, or the first fault of the problem.</returns>
    public static MixResult Solve(MixProblem problem)
    {
        if (CheckWhole(problem) is { } fault)
        {
            return new MixResult.Faulty(fault);
        }

        var portions = new List<Portion>();
        for (var i = 0; i < problem.Parts.Count; i++)
        {
            (var portion, fault) = Resolve(problem.Parts[i]);
            if (portion is null)
            {
                return new MixResult.Faulty(fault!.Within($"parts[{i}]"));
            }

            portions.Add(portion);
        }

        if (!portions.Exists(portion => portion.Fresh > Mass.Zero))
        {
            return new MixResult.Faulty(new InputFault("parts", "must weigh more than 0 together"));
        }

        var mix = Blend(portions, Fraction.FromPercent(problem.TargetMoisturePercent));
        return new MixResult.Solved(problem.Parts.Any(part => part.HasMoistureAlone)
            ? mix with { Carbon = null, Nitrogen = null, CarbonNitrogen = null }
            : mix);
    }

    /// <summary>Carbon-to-nitrogen ratio of a blend, on dry mass. [kg C / kg N]</summary>
    /// <param name="portions">What is blended.</param>
    /// <remarks>
    /// <code>R = Σ Q (1 − w) c / Σ Q (1 − w) n</code>
    /// Q fresh mass [kg]; w moisture [kg/kg, wet]; c, n carbon and nitrogen [kg/kg, dry]. Charcoal counts in neither
    /// sum. Exact mass balance, no fitted constant. Not valid for equal volumes or as-is percentages.
    /// <para>Source: [CORNELL] in docs/agronomy/sources.md. Checked against: Reference/mixes.csv.</para>
    /// </remarks>
    /// <returns>The ratio; null without nitrogen.</returns>
    internal static double? CarbonNitrogen(IEnumerable<Portion> portions)
    {
        var (carbon, nitrogen) = (0.0, 0.0);
        foreach (var portion in portions)
        {
            carbon += portion.Carbon.Kilograms;
            nitrogen += portion.Nitrogen.Kilograms;
        }

        return nitrogen > 0 ? carbon / nitrogen : null;
    }

    /// <summary>Water that brings a mix to the moisture sought. [L]</summary>
    /// <param name="fresh">Mass as it is. [kg]</param>
    /// <param name="moisture">Moisture as it is. [kg/kg, wet]</param>
    /// <param name="target">Moisture sought, below 1. [kg/kg, wet]</param>
    /// <remarks>
    /// <code>W = Q (G − w) / (1 − G), never below 0</code>
    /// Q fresh mass [kg]; w, G moisture as it is and as sought [kg/kg, wet]; one litre of water weighs one kilogram
    /// (within 1 % up to 45 °C). Exact mass balance.
    /// <para>Source: [BALANCE] in docs/agronomy/sources.md. Checked against: Reference/water.csv.</para>
    /// </remarks>
    internal static Volume WaterToReach(Mass fresh, Fraction moisture, Fraction target) =>
        Volume.FromLitres(Math.Max(0, fresh.Kilograms * (target.Value - moisture.Value) / target.Rest().Value));

    private static InputFault? CheckWhole(MixProblem problem) =>
        problem.Parts.Count == 0 ? new InputFault("parts", "must hold at least one part")
        : problem.TargetMoisturePercent is >= 0 and < 100 ? null
        : new InputFault("targetMoisturePercent", "must be 0 or more and below 100");

    private static (Portion? Portion, InputFault? Fault) Resolve(MixPart part)
    {
        Material? material = null;
        if (part.Material is not null && !MaterialTable.TryFind(part.Material, out material))
        {
            return (null, new InputFault("material", "is no known material"));
        }

        if (material is { IsRefused: true })
        {
            return (null, new InputFault("material", "never goes into a heap"));
        }

        if (InputFault.OfAmount("massKg", part.MassKg) is { } amount)
        {
            return (null, amount);
        }

        var given = part.HasMoistureAlone ? part.Given with { CarbonPercent = 0, NitrogenPercent = 0 } : part.Given;
        var (composition, fault) = Composition.Resolve(material, given);
        return composition is null
            ? (null, fault)
            : (new Portion(Mass.FromKilograms(part.MassKg), composition, material?.IsFood ?? true), null);
    }

    private static Mix Blend(List<Portion> portions, Fraction target)
    {
        var fresh = portions.Aggregate(Mass.Zero, (sum, portion) => sum + portion.Fresh);
        var dry = portions.Aggregate(Mass.Zero, (sum, portion) => sum + portion.Dry);
        var moisture = Fraction.FromValue(Math.Clamp(1 - (dry.Kilograms / fresh.Kilograms), 0, 1));
        return new Mix(
            fresh,
            dry,
            portions.Aggregate(Mass.Zero, (sum, portion) => sum + portion.Carbon),
            portions.Aggregate(Mass.Zero, (sum, portion) => sum + portion.Nitrogen),
            CarbonNitrogen(portions),
            moisture,
            WaterToReach(fresh, moisture, target));
    }
}
