using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes.Village;

/// <summary>
/// Shares goods out household by household: who lacks least is helped first, with the least that can be carried there,
/// by those who can spare it. No household that can build loses it, and none that was helped is left without.
/// </summary>
internal sealed class LargeVillage
{
    private const int MostRounds = 2, MostTries = 4, NodesForOne = 60, GoodsOfARole = 3;

    /// <summary>What is worth carrying: nobody is kept from building for want of earth or ash.</summary>
    private static readonly MaterialRole[] Bulky = [MaterialRole.Brown, MaterialRole.Green, MaterialRole.Manure];

    private readonly Goods _goods;
    private readonly double[][] _stocks;
    private readonly bool[] _able;
    private readonly int[]?[] _spare;

    private LargeVillage(Goods goods)
    {
        _goods = goods;
        _stocks = [.. goods.Stocks.Select(stock => (double[])stock.Clone())];
        _able = [.. _stocks.Select(goods.Suffice)];
        _spare = new int[]?[_stocks.Length];
    }

    /// <summary>The stocks the households end with.</summary>
    internal static double[][] Share(Goods goods)
    {
        var village = new LargeVillage(goods);
        var helped = true;
        for (var round = 0; round < MostRounds && helped; round++)
        {
            helped = village.HelpAll();
        }

        return village._stocks;
    }

    /// <summary>Helps each that lacks something once; whether any was helped.</summary>
    private bool HelpAll()
    {
        var order = Enumerable.Range(0, _stocks.Length).Where(h => !_able[h])
            .Select(h => (Household: h, Carried: NeedOf(h, PoolFor(h))?.Carried ?? double.PositiveInfinity))
            .Where(need => double.IsFinite(need.Carried))
            .OrderBy(need => need.Carried).ThenBy(need => need.Household).ToList();
        var helped = false;
        foreach (var (household, _) in order)
        {
            helped |= Help(household);
        }

        return helped;
    }

    private bool Help(int household)
    {
        var pool = PoolFor(household);
        for (var tries = 0; tries < MostTries && NeedOf(household, pool) is var (stock, _); tries++)
        {
            var before = Array.ConvertAll(_stocks, own => (double[])own.Clone());
            var spareBefore = (int[]?[])_spare.Clone();
            var lacking = Enumerable.Range(0, stock.Length)
                .Where(good => !Collect(household, good, (int)Math.Round(stock[good] - before[household][good]), pool))
                .ToList();
            if (lacking.Count == 0)
            {
                _able[household] = true;
                _spare[household] = null;
                return true;
            }

            before.CopyTo(_stocks, 0);
            spareBefore.CopyTo(_spare, 0);
        }

        return false;
    }

    /// <summary>
    /// Brings so much of a good from those who can spare it, who can build first, large givers first; when it is not
    /// all there, the pool is lowered to what is.
    /// </summary>
    private bool Collect(int household, int good, int amount, int[] pool)
    {
        var wanted = Math.Max(0, amount);
        var givers = Enumerable.Range(0, _stocks.Length).Where(h => h != household && Spare(h)[good] > 0)
            .OrderByDescending(h => _able[h]).ThenByDescending(h => Spare(h)[good]).ThenBy(h => h).ToList();
        foreach (var giver in givers.TakeWhile(_ => wanted > 0))
        {
            var gives = Math.Min(wanted, Spare(giver)[good]);
            _stocks[giver][good] -= gives;
            _stocks[household][good] += gives;
            _spare[giver] = null;
            wanted -= gives;
        }

        pool[good] = wanted > 0 ? amount - wanted : pool[good];
        return wanted == 0;
    }

    private int[] PoolFor(int household)
    {
        var pool = new int[_goods.All.Count];
        for (var h = 0; h < _stocks.Length; h++)
        {
            for (var good = 0; h != household && good < pool.Length; good++)
            {
                pool[good] += Spare(h)[good];
            }
        }

        return pool;
    }

    /// <summary>
    /// What a household can give of each good, of one at a time; those who cannot build can give all.
    /// </summary>
    private int[] Spare(int household) => _spare[household] ??=
    [
        .. _stocks[household].Select((amount, good) => amount < 1 ? 0
            : _able[household] ? _goods.Spare(_stocks[household], good)
            : (int)Math.Floor(amount)),
    ];

    /// <summary>The stock with which a household can build, for the least carried there from a pool.</summary>
    private (double[] Stock, double Carried)? NeedOf(int household, int[] pool)
    {
        var own = _stocks[household];
        var offered = Enumerable.Range(0, pool.Length)
            .Where(good => pool[good] > 0 && Bulky.Contains(_goods.All[good].Material.Role))
            .GroupBy(good => _goods.All[good].Material.Role)
            .SelectMany(role => role.OrderByDescending(good => pool[good] * _goods.Carried[good]).Take(GoodsOfARole));
        List<int> used = [.. Enumerable.Range(0, pool.Length).Where(good => own[good] > 0).Union(offered).Order()];
        var there = pool.Select((amount, good) => amount + (int)Math.Floor(own[good])).ToArray();
        var model = new ShareModel(_goods, [own], there, used);
        if (!_goods.Suffice(model.StockOf(0, u => there[used[u]])))
        {
            return null;
        }

        var search = new ShareSearch(_goods, model, double.PositiveInfinity) { NodesLeft = NodesForOne };
        search.Run();
        return search.Stocks is [var stock] ? (stock, search.Carried) : null;
    }
}
