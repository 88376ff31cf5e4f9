using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes.Village;

/// <summary>
/// All that can go into heaps in a village, one good for each material, measure and set of figures, and how much of it
/// each household has.
/// </summary>
internal sealed class Goods
{
    private readonly HeapRoom _room;
    private readonly HeapBounds _bounds;
    private readonly Measures _measures;
    private readonly Dictionary<string, bool> _known = new(StringComparer.Ordinal);

    internal Goods(VillageRequest request)
    {
        (_bounds, _measures) = (request.Method.Bounds, request.Measures);
        _room = new HeapRoom(request.Space, _bounds);
        All = Pantry.Of(request.RequestOf([.. request.Households.SelectMany(household => household.Stock)])).Usable;
        Carried = [.. All.Select(good => CarriedLitres(good))];
        Stocks = [.. request.Households.Select(household => AmountsOf(request, household.Stock))];
    }

    /// <summary>In building order.</summary>
    internal IReadOnlyList<Ingredient> All { get; }

    /// <summary>Space one measure of each good takes on the way, liquids included. [L]</summary>
    internal IReadOnlyList<double> Carried { get; }

    /// <summary>Amount of each good by household. [measures]</summary>
    internal IReadOnlyList<double[]> Stocks { get; }

    internal double LeastLitres => _bounds.LeastLitres;

    /// <summary>Whether a household with so much of each good can build a heap, if need be a wet one.</summary>
    internal bool Suffice(double[] amounts)
    {
        var key = string.Join(' ', amounts);
        if (!_known.TryGetValue(key, out var suffices))
        {
            List<Ingredient> stock =
            [
                .. All.Zip(amounts, (good, amount) => good with { Stock = good.Stock with { Amount = amount } })
                    .Where(good => good.Stock.Amount > 0),
            ];
            suffices = new HeapSearch(stock, _room, HeapLimits.MostMoistureWhenWet).CanReach(_bounds.LeastLitres);
            _known.Add(key, suffices);
        }

        return suffices;
    }

    /// <summary>Whole measures of a good that a household can give away and still build; more never hurts.</summary>
    internal int Spare(double[] amounts, int good)
    {
        var (spare, tooMuch) = (0, (int)Math.Floor(amounts[good]) + 1);
        while (tooMuch - spare > 1)
        {
            var middle = (spare + tooMuch) / 2;
            var rest = (double[])amounts.Clone();
            rest[good] -= middle;
            (spare, tooMuch) = Suffice(rest) ? (middle, tooMuch) : (spare, middle);
        }

        return spare;
    }

    /// <summary>Space one measure of something missing takes. [L]</summary>
    internal double LitresOf(Missing missing) => missing.Measure != Measures.Kilogram
        ? _measures.VolumeOf(missing.Measure).Litres
        : Ingredient.From(new StockItem(missing.Material, 1, missing.Measure), _measures)!.Litres * 2;

    /// <summary>A household's whole stock with so much of each good; what is no good stays as it is.</summary>
    internal IReadOnlyList<StockItem> StockOf(HouseholdStock household, double[] amounts) =>
    [
        .. household.Stock.Where(item => !All.Any(good => Pantry.IsSame(good.Stock, item))),
        .. All.Select((good, k) => good.Stock with { Amount = amounts[k] }).Where(item => item.Amount > 0),
    ];

    private double CarriedLitres(Ingredient good) =>
        good.Stock.Measure != Measures.Kilogram ? _measures.VolumeOf(good.Stock.Measure).Litres
        : good.Litres > 0 ? 2 * good.Litres
        : 2 * good.Mass;

    private double[] AmountsOf(VillageRequest request, IReadOnlyList<StockItem> stock)
    {
        var own = Pantry.Of(request.RequestOf(stock)).Usable;
        return
        [
            .. All.Select(good =>
                own.Where(part => Pantry.IsSame(part.Stock, good.Stock)).Sum(part => part.Stock.Amount)),
        ];
    }
}
