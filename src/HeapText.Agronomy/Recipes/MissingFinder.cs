using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes;

/// <summary>
/// Finds the least to bring, in whole local measures, so that a heap of a certain volume can be built.
/// </summary>
internal sealed class MissingFinder
{
    private const int MostSubstitutes = 5;

    /// <summary>A measure that holds less is not worth counting loads in. [L] Chosen.</summary>
    private const double LeastLoad = 10;

    /// <summary>What is most easily had of each role, and the measure it is usually carried in. Chosen.</summary>
    private static readonly (string Material, string Measure)[] Usual =
    [
        ("dry-grass", "wheelbarrow"),
        ("green-weeds", "wheelbarrow"),
        ("cow-dung", "bucket"),
    ];

    private static readonly MaterialRole[] Wanted = [MaterialRole.Brown, MaterialRole.Green, MaterialRole.Manure];

    private readonly IReadOnlyList<Ingredient> _usable;
    private readonly RecipeRequest _request;
    private readonly double _litres;
    private readonly double _mostMoisture;
    private readonly List<Ingredient> _candidates;

    /// <summary>Prepares to look for a heap of at least so many litres, no wetter than so before watering.</summary>
    internal MissingFinder(
        IReadOnlyList<Ingredient> usable, RecipeRequest request, double litres, double mostMoisture)
    {
        (_usable, _request, _litres, _mostMoisture) = (usable, request, litres, mostMoisture);
        var own = usable.Where(part => Wanted.Contains(part.Material.Role) && part.Litres > 0).Select(Load).Distinct();
        _candidates = [.. own.Concat(Usual).DistinctBy(load => load.Material).Select(Some).OfType<Ingredient>()
            .Where(part => Unit(part) >= LeastLoad)];
    }

    /// <summary>The least of one material, no more than so many litres of it; else none.</summary>
    internal IReadOnlyList<Missing> One(double mostLitres)
    {
        Ingredient? best = null;
        var room = mostLitres;
        foreach (var candidate in _candidates)
        {
            var most = (int)Math.Floor((room / Unit(candidate)) - 1e-9);
            if (Least(candidate, [], most) is { } amount)
            {
                best = Of(candidate, amount);
                room = amount * Unit(candidate);
            }
        }

        return best is null ? [] : [Describe(best, [])];
    }

    /// <summary>
    /// The least of two materials of different roles, together no more than so many litres; else none.
    /// </summary>
    internal IReadOnlyList<Missing> Two(double mostLitres)
    {
        (Ingredient First, Ingredient Second)? best = null;
        var room = mostLitres;
        for (var i = 0; i < _candidates.Count; i++)
        {
            var first = _candidates[i];
            foreach (var second in _candidates.Skip(i + 1).Where(part => part.Material.Role != first.Material.Role))
            {
                if (LeastPair(first, second, room) is { } pair)
                {
                    best = pair;
                    room = Brought(pair.First) + Brought(pair.Second);
                }
            }
        }

        return best is var (one, other) ? [Describe(one, [other]), Describe(other, [one])] : [];
    }

    /// <summary>
    /// A material on hand in the measure to ask for more of it: the farmer's own where that is a load.
    /// </summary>
    private static (string Material, string Measure) Load(Ingredient own) => (
        own.Material.Key,
        Unit(own) >= LeastLoad ? own.Stock.Measure
            : own.Material.Role == MaterialRole.Manure ? "bucket"
            : "wheelbarrow");

    private static double Brought(Ingredient part) => part.Stock.Amount * Unit(part);

    private static double Unit(Ingredient part) => part.Litres * 2;

    private static Ingredient Of(Ingredient part, double amount) =>
        part with { Stock = part.Stock with { Amount = amount } };

    private Ingredient? Some((string Material, string Measure) load) =>
        Ingredient.From(new StockItem(load.Material, 0, load.Measure), _request.Measures);

    private bool Suffices(params IEnumerable<Ingredient> more)
    {
        var stock = Pantry.NoLimeWithManure(more.Aggregate(_usable.ToList(), Pantry.Add));
        return new HeapSearch(stock, _request.Room, _mostMoisture).CanReach(_litres);
    }

    /// <summary>The least whole amount up to a most that suffices; more never hurts, so halving finds it.</summary>
    private int? Least(Ingredient part, Ingredient[] others, int most)
    {
        if (most < 1 || !Suffices([Of(part, most), .. others]))
        {
            return null;
        }

        var (low, high) = (0, most);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Suffices([Of(part, middle), .. others]) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private (Ingredient First, Ingredient Second)? LeastPair(Ingredient first, Ingredient second, double mostLitres)
    {
        (Ingredient, Ingredient)? best = null;
        var room = mostLitres;
        for (var amount = 1; amount * Unit(first) < room; amount++)
        {
            var most = (int)Math.Floor(((room - (amount * Unit(first))) / Unit(second)) - 1e-9);
            if (Least(second, [Of(first, amount)], most) is { } other)
            {
                best = (Of(first, amount), Of(second, other));
                room = Brought(Of(first, amount)) + Brought(Of(second, other));
            }
        }

        return best;
    }

    private Missing Describe(Ingredient part, Ingredient[] others) => new(
        part.Material.Key,
        part.Material.Role,
        part.Stock.Amount,
        part.Stock.Measure,
        WhyOf(part.Material.Role),
        [.. Substitutes(part, others).Take(MostSubstitutes)]);

    private IEnumerable<string> Substitutes(Ingredient part, Ingredient[] others)
    {
        var ratio = part.Material.Figures!.CarbonNitrogen!.Typical;
        return MaterialTable.All
            .Where(other => other.Role == part.Material.Role && other.Figures is not null)
            .Where(other => other.Key != part.Material.Key)
            .OrderBy(other => Math.Abs(Math.Log(other.Figures!.CarbonNitrogen!.Typical / ratio)))
            .Select(other => Some((other.Key, part.Stock.Measure))!)
            .Where(other => other.Litres > 0 && Suffices([Of(other, part.Stock.Amount), .. others]))
            .Select(other => other.Material.Key);
    }

    private Lack WhyOf(MaterialRole role)
    {
        // Earth, minerals, charcoal and feed are seasoning: a stock does not suffer from them.
        List<Ingredient> bulk = [.. _usable.Where(part => Wanted.Contains(part.Material.Role))];
        var all = new Batch(bulk, [.. bulk.Select(part => (int)Math.Min(int.MaxValue, 2 * part.Stock.Amount))], 1);
        var isWet = all.Mass - all.Dry > HeapLimits.MostMoisture * all.Mass;
        return role == MaterialRole.Brown
            ? isWet ? Lack.TooWet
                : all.CarbonNitrogen < HeapLimits.LeastCarbonNitrogen ? Lack.TooMuchNitrogen : Lack.TooLittle
            : all.CarbonNitrogen > HeapLimits.MostCarbonNitrogen ? Lack.TooMuchCarbon : Lack.TooLittle;
    }
}
