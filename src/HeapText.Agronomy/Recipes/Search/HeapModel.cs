using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes.Search;

/// <summary>
/// The hard limits as linear rows over half measures a round. Ratios hold for one round as for all; only the
/// volume and the stock depend on the number of rounds.
/// </summary>
internal sealed class HeapModel
{
    /// <summary>Columns of C/N misses: how far varying materials pass 20-40, and how far C/N is from 30.</summary>
    internal const int Misses = 2;

    private const double Rounding = 1e-9;
    private const double MostMiss = 1000;
    private const double Noise = 1e-12;

    private static readonly (int Side, double Edge, Func<Ingredient, Food> Food, int Miss)[] Edges =
    [
        (-1, HeapLimits.LeastVariedCarbonNitrogen, part => part.Varied.LowByCarbon, 0),
        (-1, HeapLimits.LeastVariedCarbonNitrogen, part => part.Varied.LowByNitrogen, 0),
        (1, HeapLimits.MostVariedCarbonNitrogen, part => part.Varied.HighByCarbon, 0),
        (1, HeapLimits.MostVariedCarbonNitrogen, part => part.Varied.HighByNitrogen, 0),
        (-1, HeapLimits.SoughtCarbonNitrogen - HeapLimits.CarbonNitrogenLeeway, part => part.Food, 1),
        (1, HeapLimits.SoughtCarbonNitrogen + HeapLimits.CarbonNitrogenLeeway, part => part.Food, 1),
    ];

    private readonly IReadOnlyList<Ingredient> _ingredients;
    private readonly List<Limit> _ratios = [];
    private readonly double[] _litres;
    private readonly double _grain;

    /// <summary>Writes the limits down.</summary>
    /// <param name="ingredients">One column each.</param>
    /// <param name="mostMoisture">Most moisture before watering. [kg/kg, wet]</param>
    internal HeapModel(IReadOnlyList<Ingredient> ingredients, double mostMoisture)
    {
        _ingredients = ingredients;
        _litres = Column(ingredient => ingredient.Litres);
        _grain = VolumeSums.Grain(_litres);
        Keep(part => part.Food.Carbon - (HeapLimits.MostCarbonNitrogen * part.Food.Nitrogen));
        Keep(part => (HeapLimits.LeastCarbonNitrogen * part.Food.Nitrogen) - part.Food.Carbon);
        Keep(part => part.Mass - part.Dry - (mostMoisture * part.Mass));
        Keep(part => part.Mass - (HeapLimits.MostDensity * part.Litres));
        Keep(part => (part.Dry / HeapLimits.LeastMoisture) - (HeapLimits.MostDensity * part.Litres));
        KeepShare(HeapLimits.MostEarth, material => material.Role == MaterialRole.Earth);
        KeepShare(HeapLimits.MostCharcoal, material => material.Role == MaterialRole.Charcoal);
        KeepShare(HeapLimits.MostMineral, material => material.Role == MaterialRole.Mineral);
        KeepShare(HeapLimits.MostWoodAsh, material => material.Key == "wood-ash");
        KeepShare(HeapLimits.MostFeed, material => material.Role == MaterialRole.Feed);
        KeepShare(HeapLimits.MostManure, material => material.Role == MaterialRole.Manure);
        KeepShare(HeapLimits.MostFreshPoultry, material => material.Key == "poultry-manure");
    }

    internal int Columns => _ingredients.Count;

    /// <summary>The limits that hold for any amount in the same proportions.</summary>
    internal IReadOnlyList<Limit> Ratios => _ratios;

    /// <summary>What the volume of a heap must exceed to be larger than one of so many litres by a grain. [L]</summary>
    internal double JustBelowNext(int rounds, double litres)
    {
        const double almost = 1e-6;
        var step = rounds * _grain;
        return step > 0 ? (Math.Floor((litres / step) + almost) + 1 - almost) * step : litres;
    }

    /// <summary>The most volume up to a bound that whole half measures of the stock can add up to. [L]</summary>
    internal double Reachable(int rounds, double most) =>
        rounds * VolumeSums.MostUpTo(most / rounds, _litres, Stock(rounds, most, step: 1));

    /// <summary>The program whose worth is the heap's volume in litres.</summary>
    internal LinearProgram ForVolume(int rounds, double least, double most)
    {
        var worth = Array.ConvertAll(_litres, litres => litres * rounds);
        List<Limit> rows = [.. _ratios, VolumeLimit(_litres, rounds, least, most)];
        return new LinearProgram(worth, Stock(rounds, most, step: 1), rows);
    }

    /// <summary>
    /// The program whose worth is that of the later wishes; its last columns are the misses of C/N, in points.
    /// </summary>
    /// <param name="rounds">Rounds of layers.</param>
    /// <param name="least">Least volume. [L]</param>
    /// <param name="most">Most volume. [L]</param>
    /// <param name="step">Half measures a column counts: 1, or 2 for whole measures only.</param>
    /// <param name="wishes">What the wishes are worth.</param>
    /// <remarks>
    /// <code>Σ (C − r N) k ≤ N0 m</code>
    /// C, N carbon and nitrogen of half a measure [kg]; k half measures; r an edge of C/N; N0 nitrogen of the largest
    /// heap [kg], which stands for that of the heap sought; m points by which C/N passes the edge.
    /// </remarks>
    internal LinearProgram ForWishes(int rounds, double least, double most, int step, Wishes wishes)
    {
        var worth = new double[Columns + Misses];
        var upper = new double[Columns + Misses];
        Stock(rounds, most, step).CopyTo(upper, 0);
        for (var j = 0; j < Columns; j++)
        {
            worth[j] = wishes.WorthOfHalf(_ingredients[j], rounds) * step;
        }

        for (var miss = 0; miss < Misses; miss++)
        {
            (worth[Columns + miss], upper[Columns + miss]) = (Wishes.WorthsOfMisses[miss], MostMiss);
        }

        List<Limit> rows = [.. _ratios.Select(row => Widen(row.Weights, step, []))];
        foreach (var (side, edge, food, miss) in Edges)
        {
            var weights = Column(part => side * (food(part).Carbon - (edge * food(part).Nitrogen)));
            if (Array.Exists(weights, weight => weight > 0))
            {
                var slack = new double[Misses];
                slack[miss] = -wishes.NitrogenKg / rounds;
                rows.Add(Widen(weights, step, slack));
            }
        }

        var volume = VolumeLimit(_litres, rounds, least, most);
        rows.Add(Widen(volume.Weights, step, []) with { Most = volume.Most, Range = volume.Range });
        return new LinearProgram(worth, upper, rows);
    }

    private static Limit Widen(double[] weights, int step, double[] last)
    {
        var wide = new double[weights.Length + Misses];
        Array.ConvertAll(weights, weight => weight * step).CopyTo(wide, 0);
        last.CopyTo(wide, weights.Length);
        return new Limit(wide, 0);
    }

    private static Limit VolumeLimit(double[] litres, int rounds, double least, double most) =>
        new(litres, most / rounds, (most - least) / rounds);

    private double[] Stock(int rounds, double most, int step)
    {
        const int halvesPerMeasure = 2;
        return Column(part =>
        {
            var stock = part.Stock.Amount * halvesPerMeasure / rounds;
            var room = part.Litres > 0 ? most / (rounds * part.Litres)
                : part.Mass > 0 ? HeapLimits.MostDensity * most / (rounds * part.Mass) : 0;
            return Math.Floor((Math.Min(stock, room) / step) + Rounding);
        });
    }

    private double[] Column(Func<Ingredient, double> value)
    {
        var column = new double[_ingredients.Count];
        for (var j = 0; j < column.Length; j++)
        {
            column[j] = value(_ingredients[j]);
        }

        return column;
    }

    private void Keep(Func<Ingredient, double> excess)
    {
        // A material that meets a limit exactly leaves rounding noise, which would become a limit of its own.
        var weights = Column(part => excess(part) is var weight && Math.Abs(weight) > Noise * part.Mass ? weight : 0);
        if (Array.Exists(weights, weight => weight > 0))
        {
            _ratios.Add(new Limit(weights, 0));
        }
    }

    private void KeepShare(double most, Predicate<Material> isIn) =>
        Keep(part => ((isIn(part.Material) ? 1 : 0) - most) * part.Litres);
}
