namespace HeapText.Agronomy.Recipes.Village;

/// <summary>
/// Shares goods out among few households exactly: most of them build, and among those plans the least is carried.
/// </summary>
internal static class SmallVillage
{
    /// <summary>Shares out anew.</summary>
    /// <param name="goods">All goods.</param>
    /// <param name="stocks">Stock of each household.</param>
    /// <param name="start">A plan to beat: the stocks the households end with.</param>
    /// <param name="nodes">How long to look. [nodes]</param>
    /// <returns>The best stocks found to end with, and whether they are proved best.</returns>
    internal static (IReadOnlyList<double[]> Stocks, bool IsProven) Share(
        Goods goods, IReadOnlyList<double[]> stocks, IReadOnlyList<double[]> start, int nodes)
    {
        var able = Enumerable.Range(0, stocks.Count).Where(h => goods.Suffice(stocks[h])).ToList();
        var best = (
            Stocks: start, Builders: start.Count(goods.Suffice), Carried: Carries.LitresOf(goods, stocks, start));
        for (var builders = stocks.Count; builders > able.Count && builders >= best.Builders; builders--)
        {
            foreach (var group in Groups(stocks.Count, builders).Where(group => !able.Except(group).Any()))
            {
                var bound = best.Builders == builders ? best.Carried : double.PositiveInfinity;
                var (found, left) = Share(goods, stocks, group, bound, nodes);
                best = found is null ? best : (found, builders, Carries.LitresOf(goods, stocks, found));
                if ((nodes = left) < 0)
                {
                    return (best.Stocks, false);
                }
            }
        }

        return (best.Stocks, true);
    }

    private static (IReadOnlyList<double[]>? Stocks, int NodesLeft) Share(
        Goods goods, IReadOnlyList<double[]> stocks, List<int> builders, double bound, int nodes)
    {
        var there = Enumerable.Range(0, goods.All.Count)
            .Select(good => (int)stocks.Sum(stock => Math.Floor(stock[good]))).ToArray();
        var used = Enumerable.Range(0, goods.All.Count).Where(good => stocks.Any(stock => stock[good] > 0)).ToList();
        if (!used.Exists(good => goods.All[good].Litres > 0))
        {
            return (null, nodes);
        }

        var model = new ShareModel(goods, [.. builders.Select(h => stocks[h])], there, used);
        var search = new ShareSearch(goods, model, bound) { NodesLeft = nodes };
        search.Run();
        return (search.Stocks is { } ends ? Settle(stocks, builders, ends) : null, search.NodesLeft);
    }

    /// <summary>
    /// Builders keep of their own what nobody needs, and others give what is needed, the first in the list first.
    /// </summary>
    private static double[][] Settle(IReadOnlyList<double[]> stocks, List<int> builders, double[][] ends)
    {
        double[][] settled = [.. stocks.Select(stock => (double[])stock.Clone())];
        for (var good = 0; good < settled[0].Length; good++)
        {
            var wanted = 0.0;
            for (var b = 0; b < builders.Count; b++)
            {
                var more = Math.Max(0, ends[b][good] - stocks[builders[b]][good]);
                settled[builders[b]][good] += more;
                wanted += more;
            }

            var givers = Enumerable.Range(0, stocks.Count).OrderBy(builders.Contains);
            foreach (var giver in givers.TakeWhile(_ => wanted > 0))
            {
                var place = builders.IndexOf(giver);
                var keep = place < 0 ? 0 : ends[place][good];
                var gives = Math.Clamp(Math.Floor(stocks[giver][good] - keep), 0, wanted);
                settled[giver][good] -= gives;
                wanted -= gives;
            }
        }

        return settled;
    }

    private static IEnumerable<List<int>> Groups(int count, int size)
    {
        for (var bits = 0; bits < 1 << count; bits++)
        {
            if (int.PopCount(bits) == size)
            {
                var group = bits;
                yield return [.. Enumerable.Range(0, count).Where(h => (group & (1 << h)) != 0)];
            }
        }
    }
}
