using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes.Village;

/// <summary>
/// How goods may be shared out so that certain households can build, as a linear program that leaves out that layers
/// are counted in halves: what it rules out is ruled out, what it allows has to be checked.
/// </summary>
/// <remarks>
/// <code>minimise Σ v e   with  w ≤ own + e,  x ≤ 2 w + 2 odd,  Σ w ≤ there,  the limits of a heap on x</code>
/// Per household and good: w whole measures it ends with; e those it is brought; x half measures it puts into its heap;
/// own, odd its own whole measures and the rest; v litres a measure; there all whole measures in reach.
/// </remarks>
internal sealed class ShareModel
{
    private const int Parts = 3;

    private readonly Goods _goods;
    private readonly IReadOnlyList<double[]> _stocks;
    private readonly IReadOnlyList<int> _used;
    private readonly int[] _there;

    /// <summary>Prepares to share out goods.</summary>
    /// <param name="goods">All goods.</param>
    /// <param name="builders">Stocks of the households that shall build.</param>
    /// <param name="there">Whole measures of each good in reach, theirs included.</param>
    /// <param name="used">The goods worth looking at.</param>
    internal ShareModel(Goods goods, IReadOnlyList<double[]> builders, int[] there, IReadOnlyList<int> used) =>
        (_goods, _stocks, _there, _used) = (goods, builders, there, used);

    internal int Builders => _stocks.Count;

    internal int Used => _used.Count;

    internal int Columns => Parts * Builders * Used;

    /// <summary>Column of what a builder ends with of a used good; these are the whole ones and come first.</summary>
    internal int Whole(int builder, int used) => (builder * Used) + used;

    /// <summary>Stock of a builder that ends with so much.</summary>
    internal double[] StockOf(int builder, Func<int, double> whole)
    {
        var stock = (double[])_stocks[builder].Clone();
        for (var u = 0; u < Used; u++)
        {
            stock[_used[u]] = whole(u) + Odd(builder, _used[u]);
        }

        return stock;
    }

    /// <summary>Litres that must be carried for a builder to end with such a stock.</summary>
    internal double CarriedTo(int builder, double[] stock) => Enumerable.Range(0, stock.Length)
        .Sum(good => Math.Max(0, stock[good] - _stocks[builder][good]) * _goods.Carried[good]);

    internal LinearProgram Write()
    {
        var (worth, upper) = (new double[Columns], new double[Columns]);
        List<Limit> rows = [];
        var ratios = new HeapModel([.. _used.Select(good => _goods.All[good])], HeapLimits.MostMoistureWhenWet).Ratios;
        for (var b = 0; b < Builders; b++)
        {
            for (var u = 0; u < Used; u++)
            {
                var (good, own) = (_used[u], Math.Floor(_stocks[b][_used[u]]));
                worth[Brought(b, u)] = -_goods.Carried[good];
                upper[Whole(b, u)] = _there[good];
                upper[Brought(b, u)] = Math.Max(0, _there[good] - own);
                upper[Laid(b, u)] = 2 * (_there[good] + Odd(b, good));
                rows.Add(Row(own, (Whole(b, u), 1), (Brought(b, u), -1)));
                rows.Add(Row(2 * Odd(b, good), (Laid(b, u), 1), (Whole(b, u), -2)));
            }

            var builder = b;
            rows.AddRange(ratios.Select(ratio =>
                Row(0, [.. ratio.Weights.Select((weight, u) => (Laid(builder, u), weight))])));
            rows.Add(Row(
                -_goods.LeastLitres, [.. _used.Select((good, u) => (Laid(builder, u), -_goods.All[good].Litres))]));
        }

        for (var u = 0; u < Used && Builders > 1; u++)
        {
            var used = u;
            rows.Add(Row(_there[_used[u]], [.. Enumerable.Range(0, Builders).Select(b => (Whole(b, used), 1.0))]));
        }

        return new LinearProgram(worth, upper, rows);
    }

    private int Brought(int builder, int used) => ((Builders + builder) * Used) + used;

    private int Laid(int builder, int used) => (((2 * Builders) + builder) * Used) + used;

    private double Odd(int builder, int good) => _stocks[builder][good] - Math.Floor(_stocks[builder][good]);

    private Limit Row(double most, params (int Column, double Weight)[] cells)
    {
        var weights = new double[Columns];
        foreach (var (column, weight) in cells)
        {
            weights[column] = weight;
        }

        return new Limit(weights, most);
    }
}
