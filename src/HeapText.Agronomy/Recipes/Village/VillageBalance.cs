namespace HeapText.Agronomy.Recipes.Village;

/// <summary>Works out what neighbours should give each other so that more households can build a heap.</summary>
public static class VillageBalance
{
    /// <summary>Households among whom the best sharing is sought exactly, and goods among them. Chosen.</summary>
    private const int MostHouseholds = 4, MostGoods = 12;

    /// <summary>How long a small village, and a small group in a large one, may be looked at. [nodes] Chosen.</summary>
    private const int NodesOfVillage = 20_000, NodesOfGroup = 300;

    /// <summary>A plan by which as many households as possible build, and among such plans little is carried.</summary>
    /// <param name="request">The households and what they have.</param>
    /// <remarks>
    /// Whole measures are moved, refused things never. A household that can build alone still can, if perhaps a smaller
    /// heap; households that cannot build may give all they have. Up to four households with up to twelve goods are
    /// shared out exactly, as <see cref="VillagePlan.IsProven"/> says; in larger villages no fewer build than before.
    /// Same answer every time.
    /// <para>Source: derived. Checked against: exhaustive search in the tests.</para>
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// A request that <see cref="VillageRequest.Check"/> finds fault with.
    /// </exception>
    public static VillagePlan Solve(VillageRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Check() is { } fault)
        {
            throw new ArgumentException(fault.ToString(), nameof(request));
        }

        var goods = new Goods(request);
        var shared = LargeVillage.Share(goods);
        var isSmall = goods.Stocks.Count <= MostHouseholds && goods.All.Count <= MostGoods;
        var (ends, isProven) = isSmall
            ? SmallVillage.Share(goods, goods.Stocks, shared, NodesOfVillage)
            : (ShareInGroups(goods, shared), false);
        List<HouseholdPlan> households =
        [
            .. request.Households.Select((household, h) => new HouseholdPlan(
                household.Name,
                goods.Suffice(goods.Stocks[h]),
                RecipeSolver.Solve(request.RequestOf(goods.StockOf(household, ends[h]))))),
        ];
        return new VillagePlan
        {
            Moves = [.. Carries.Of(goods.Stocks, ends).Select(carry => Describe(carry, request, goods))],
            Households = households,
            Lacking = LackingOf(households, goods),
            Surplus = SurplusOf(households),
            IsProven = isProven,
        };
    }

    /// <summary>Shares out anew within each small group of households that give to each other.</summary>
    private static double[][] ShareInGroups(Goods goods, double[][] shared)
    {
        var groupOf = Enumerable.Range(0, shared.Length).ToArray();
        foreach (var carry in Carries.Of(goods.Stocks, shared))
        {
            var (kept, joined) = (groupOf[carry.From], groupOf[carry.To]);
            groupOf = Array.ConvertAll(groupOf, group => group == joined ? kept : group);
        }

        foreach (var group in Enumerable.Range(0, shared.Length).GroupBy(h => groupOf[h], (_, group) => group.ToList()))
        {
            if (group.Count is > 1 and <= MostHouseholds)
            {
                List<double[]> before = [.. group.Select(h => goods.Stocks[h])];
                var (better, _) = SmallVillage.Share(goods, before, [.. group.Select(h => shared[h])], NodesOfGroup);
                group.Zip(better).ToList().ForEach(end => shared[end.First] = end.Second);
            }
        }

        return shared;
    }

    private static Move Describe(Carry carry, VillageRequest request, Goods goods) => new(
        request.Households[carry.From].Name,
        request.Households[carry.To].Name,
        goods.All[carry.Good].Stock.Material,
        carry.Amount,
        goods.All[carry.Good].Stock.Measure,
        carry.Amount * goods.Carried[carry.Good]);

    /// <summary>
    /// About what the households still without a heap have to be brought, one entry a role: its litres in the material
    /// and measure asked for most, the other materials asked for as substitutes.
    /// </summary>
    private static List<Missing> LackingOf(List<HouseholdPlan> households, Goods goods) =>
    [
        .. households.Where(household => !household.Builds).SelectMany(household => household.After.Missing)
            .GroupBy(missing => missing.Role).OrderBy(role => role.Key).Select(role => Together([.. role], goods)),
    ];

    private static Missing Together(List<Missing> role, Goods goods)
    {
        double Litres(Missing missing) => missing.Amount * goods.LitresOf(missing);

        T Most<T>(Func<Missing, T> key) => role.GroupBy(key)
            .OrderByDescending(same => same.Sum(Litres)).ThenBy(same => same.Key).First().Key;

        var load = Most(missing => (missing.Material, missing.Measure));
        var most = role.First(missing => (missing.Material, missing.Measure) == load);
        return most with
        {
            Amount = Math.Ceiling(role.Sum(Litres) / goods.LitresOf(most)),
            Why = Most(missing => missing.Why),
            Substitutes =
            [
                .. role.Select(missing => missing.Material)
                    .Concat(most.Substitutes.Where(key => role.TrueForAll(one => one.Substitutes.Contains(key))))
                    .Distinct().Where(key => key != most.Material),
            ],
        };
    }

    private static List<StockItem> SurplusOf(List<HouseholdPlan> households) =>
    [
        .. households.Select(household => household.After).OfType<RecipeResult.Solved>()
            .SelectMany(solved => solved.Left)
            .Where(item => Materials.MaterialTable.TryFind(item.Material, out var material) && !material.IsRefused)
            .GroupBy(item => (item.Material, item.Measure))
            .Select(same => new StockItem(same.Key.Material, same.Sum(item => item.Amount), same.Key.Measure))
            .OrderBy(item => item.Material, StringComparer.Ordinal)
            .ThenBy(item => item.Measure, StringComparer.Ordinal),
    ];
}
