using Google.OrTools.Sat;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>
/// The same problem for Google OR-Tools CP-SAT: whole numbers of half measures a round, one model for each number of
/// rounds. Asks whether a heap of at least so many litres exists, which is settled only by a proof.
/// </summary>
internal static class CpSatOracle
{
    private const double Scale = 1e9;

    // Whole weights are off by up to half a unit each, which must not break a limit that is met exactly.
    private const long Slack = 200;

    private const string Settings = "num_workers:1, max_time_in_seconds:20, random_seed:1";

    /// <summary>Whether a heap of at least so many litres exists; null when CP-SAT did not settle it in time.</summary>
    internal static bool? Exists(StockItem[] stock, double litres, double mostMoisture, HeapBounds? given = null)
    {
        var bounds = given ?? new HeapBounds(HeapForm.Open, 1.2, 2.0, 4.0, 1.5, 1000);
        bool? answer = false;
        for (var rounds = 3; rounds <= 10; rounds++)
        {
            var (low, high) = (0.15 * rounds, Math.Min(bounds.HighestM, 0.25 * rounds));
            var (small, large) = (bounds.NarrowestM * bounds.NarrowestM, bounds.WidestM * bounds.LongestM);
            var litresPerM = bounds.Form == HeapForm.Ring ? 1000 * Math.PI / 4 : 1000;
            var (least, most) = (Math.Max(bounds.LeastLitres, small * low * litresPerM), large * high * litresPerM);
            if (low > high + 1e-9 || Math.Max(least, litres) > most)
            {
                continue;
            }

            var status = Solve(stock, rounds, Math.Max(least, litres), most, mostMoisture);
            if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
            {
                return true;
            }

            answer = status == CpSolverStatus.Infeasible ? answer : null;
        }

        return answer;
    }

    private static CpSolverStatus Solve(StockItem[] stock, int rounds, double least, double most, double mostMoisture)
    {
        var model = new CpModel();
        var parts = stock.Select(item => Part.Of(item with { Amount = 0.5 })).ToArray();
        var halves = stock.Select((item, i) =>
            model.NewIntVar(0, (long)Math.Floor((2 * item.Amount / rounds) + 1e-9), $"{item.Material}{i}")).ToArray();

        void AtMost(Func<Part, double> weight, double limit) =>
            model.Add(LinearExpr.WeightedSum(halves, parts.Select(part => (long)Math.Round(weight(part) * Scale)))
                <= (long)Math.Round(limit * Scale) + Slack);

        void ShareAtMost(Func<Part, bool> isIn, double share) =>
            AtMost(part => (isIn(part) ? part.Litres : 0) - (share * part.Litres), 0);

        double Nitrogen(Part part) => part.Role == MaterialRole.Charcoal ? 0 : part.Dry * part.Nitrogen;
        double Carbon(Part part) => part.Role == MaterialRole.Charcoal ? 0 : part.Dry * part.Carbon;

        AtMost(part => -part.Litres, -least / rounds);
        AtMost(part => part.Litres, most / rounds);
        AtMost(part => Carbon(part) - (40 * Nitrogen(part)), 0);
        AtMost(part => (25 * Nitrogen(part)) - Carbon(part), 0);
        AtMost(part => part.Mass - part.Dry - (mostMoisture * part.Mass), 0);
        AtMost(part => part.Mass - (0.640 * part.Litres), 0);
        AtMost(part => (2 * part.Dry) - (0.640 * part.Litres), 0);
        ShareAtMost(part => part.Role == MaterialRole.Earth, 0.10);
        ShareAtMost(part => part.Role == MaterialRole.Charcoal, 0.10);
        ShareAtMost(part => part.Role == MaterialRole.Mineral, 0.03);
        ShareAtMost(part => part.Key == "wood-ash", 0.02);
        ShareAtMost(part => part.Role == MaterialRole.Feed, 0.05);
        ShareAtMost(part => part.Role == MaterialRole.Manure, 0.50);
        ShareAtMost(part => part.Key == "poultry-manure", 0.20);
        ShareAtMost(part => part.Key == "lime", parts.Any(part => part.Role == MaterialRole.Manure) ? 0 : 1);

        return new CpSolver { StringParameters = Settings }.Solve(model);
    }
}
