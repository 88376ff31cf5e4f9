using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Agronomy.Tests.Recipes.Village;

/// <summary>
/// Every way to share out whole measures among households, tried one by one: most heaps first, then least litres
/// carried, nobody worse off. For a handful of loads only.
/// </summary>
internal sealed class ExhaustiveVillage
{
    private readonly (string Material, string Measure)[] _goods;
    private readonly int[][] _own;
    private readonly bool[] _able;
    private readonly Dictionary<string, bool> _builds = [];

    internal ExhaustiveVillage(VillageRequest request)
    {
        _goods = [.. request.Households.SelectMany(house => house.Stock)
            .Select(item => (item.Material, item.Measure)).Distinct()];
        _own =
        [
            .. request.Households.Select(house => _goods.Select(good => (int)house.Stock
                .Where(item => (item.Material, item.Measure) == good).Sum(item => item.Amount)).ToArray()),
        ];
        _able = [.. _own.Select(Builds)];
    }

    internal int Able => _able.Count(able => able);

    internal (int Heaps, double Carried) Best()
    {
        var best = (Heaps: -1, Carried: 0.0);
        var shares = _goods.Select((_, good) => Shares(_own.Sum(own => own[good]), _own.Length).ToList()).ToList();
        Try(0, Array.ConvertAll(_own, own => new int[own.Length]));
        return best;

        void Try(int good, int[][] ends)
        {
            if (good == shares.Count)
            {
                var heaps = ends.Count(Builds);
                var carried = ends.Select((end, h) => Carried(end, _own[h])).Sum();
                var isFair = ends.Select((end, h) => !_able[h] || Builds(end)).All(fair => fair);
                if (isFair && (heaps > best.Heaps || (heaps == best.Heaps && carried < best.Carried - 1e-6)))
                {
                    best = (heaps, carried);
                }

                return;
            }

            foreach (var share in shares[good])
            {
                for (var h = 0; h < ends.Length; h++)
                {
                    ends[h][good] = share[h];
                }

                Try(good + 1, ends);
            }
        }
    }

    private double Carried(int[] end, int[] own) => _goods.Select((good, i) =>
        Math.Max(0, end[i] - own[i]) * Measures.Default.VolumeOf(good.Measure).Litres).Sum();

    private bool Builds(int[] stock)
    {
        var key = string.Join(',', stock);
        if (!_builds.TryGetValue(key, out var builds))
        {
            StockItem[] items = [.. _goods.Select((good, i) => new StockItem(good.Material, stock[i], good.Measure))];
            _builds[key] = builds = RecipeSolver.Solve(new RecipeRequest { Stock = items }) is RecipeResult.Solved;
        }

        return builds;
    }

    private static IEnumerable<int[]> Shares(int total, int among)
    {
        if (among == 1)
        {
            yield return [total];
            yield break;
        }

        for (var first = 0; first <= total; first++)
        {
            foreach (var rest in Shares(total - first, among - 1))
            {
                yield return [first, .. rest];
            }
        }
    }
}
