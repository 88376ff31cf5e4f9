using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes.Search;

/// <summary>
/// The hard limits as linear rows over half measures a round. Ratios hold for one round as for all; only the
/// volume and the stock depend on the number of rounds.
/// </summary>
internal sealed class HeapModel
{
    private const double Rounding = 1e-9;

    private readonly IReadOnlyList<Ingredient> _ingredients;
    private readonly List<Limit> _ratios = [];
    private readonly double[] _litres;

    /// <summary>Writes the limits down.</summary>
    /// <param name="ingredients">One column each.</param>
    /// <param name="mostMoisture">Most moisture before watering. [kg/kg, wet]</param>
    internal HeapModel(IReadOnlyList<Ingredient> ingredients, double mostMoisture)
    {
        _ingredients = ingredients;
        _litres = Column(ingredient => ingredient.Litres);
        Keep(part => part.Carbon - (HeapLimits.MostCarbonNitrogen * part.Nitrogen));
        Keep(part => (HeapLimits.LeastCarbonNitrogen * part.Nitrogen) - part.Carbon);
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

    /// <summary>The program whose worth is that of the later wishes; its last column is the C/N miss.</summary>
    /// <param name="rounds">Rounds of layers.</param>
    /// <param name="least">Least volume. [L]</param>
    /// <param name="most">Most volume. [L]</param>
    /// <param name="step">Half measures a column counts: 1, or 2 for whole measures only.</param>
    /// <param name="wishes">What the wishes are worth.</param>
    internal LinearProgram ForWishes(int rounds, double least, double most, int step, Wishes wishes)
    {
        var worth = new double[Columns + 1];
        var upper = new double[Columns + 1];
        Stock(rounds, most, step).CopyTo(upper, 0);
        for (var j = 0; j < Columns; j++)
        {
            worth[j] = wishes.WorthOfHalf(_ingredients[j], rounds) * step;
        }

        var nitrogen = wishes.NitrogenKg / rounds;
        (worth[Columns], upper[Columns]) = (-1, HeapLimits.MostCarbonNitrogen);
        List<Limit> rows = [.. _ratios.Select(row => Widen(row.Weights, 0, step)), MissRow(1), MissRow(-1)];
        var volume = VolumeLimit(_litres, rounds, least, most);
        rows.Add(Widen(volume.Weights, 0, step) with { Most = volume.Most, Range = volume.Range });
        return new LinearProgram(worth, upper, rows);

        Limit MissRow(int side)
        {
            var edge = HeapLimits.SoughtCarbonNitrogen + (side * HeapLimits.CarbonNitrogenLeeway);
            return Widen(Column(part => side * (part.Carbon - (edge * part.Nitrogen))), -nitrogen, step);
        }
    }

    private static Limit Widen(double[] weights, double last, int step) =>
        new([.. weights.Select(weight => weight * step), last], 0);

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
        var weights = Column(excess);
        if (Array.Exists(weights, weight => weight > 0))
        {
            _ratios.Add(new Limit(weights, 0));
        }
    }

    private void KeepShare(double most, Predicate<Material> isIn) =>
        Keep(part => ((isIn(part.Material) ? 1 : 0) - most) * part.Litres);
}
