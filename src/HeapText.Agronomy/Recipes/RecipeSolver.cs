using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes;

/// <summary>
/// Turns what a household has into a heap: small amounts a round, a number of rounds, water, dimensions.
/// </summary>
public static class RecipeSolver
{
    /// <summary>Most that one may be asked to bring before two materials are tried. [L] Chosen: three heaps.</summary>
    private const double MostToBring = 3000;

    /// <summary>A heap below this is helped to grow. [L] Chosen.</summary>
    private const double SmallLitres = 2000;

    /// <summary>What a household carries in a day beside its work. [L] Chosen: ten wheelbarrows.</summary>
    private const double DayLoad = 650;

    /// <summary>An improvement worth a walk.</summary>
    private const double Quarter = 1.25;

    /// <summary>
    /// The best heap of a stock: limits first, then volume, C/N near 30, few leftovers, whole measures.
    /// </summary>
    /// <param name="request">Stock, measures and room.</param>
    /// <remarks>
    /// <code>maximise n Σ k v/2 over n, k whole; n k/2 ≤ stock; limits of HeapLimits</code>
    /// n rounds; k half measures a round; v litres a measure. Exact by branch and bound: the volume is within 0.1 % of
    /// the most possible. Same answer whatever the order of the stock.
    /// <para>
    /// Source: limits by key in docs/agronomy/sources.md. Checked against: Google OR-Tools CP-SAT in the tests.
    /// </para>
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// A request that <see cref="RecipeRequest.Check"/> finds fault with.
    /// </exception>
    public static RecipeResult Solve(RecipeRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Check() is { } fault)
        {
            throw new ArgumentException(fault.ToString(), nameof(request));
        }

        var pantry = Pantry.Of(request);
        var batch = new HeapSearch(pantry.Usable, request.Space, HeapLimits.MostMoisture).Best()
            ?? new HeapSearch(pantry.Usable, request.Space, HeapLimits.MostMoistureWhenWet).Best();
        return batch is null ? Refuse(pantry, request) : Describe(pantry, batch, request);
    }

    private static RecipeResult.NoHeap Refuse(Pantry pantry, RecipeRequest request)
    {
        var fits = Enumerable.Range(HeapLimits.FewestRounds, HeapLimits.MostRounds - HeapLimits.FewestRounds + 1)
            .Any(rounds => request.Space.LitresOf(rounds) is not null);
        var finder = new MissingFinder(
            pantry.Usable, request, HeapLimits.LeastLitres, HeapLimits.MostMoistureWhenWet);
        IReadOnlyList<Missing> missing = fits ? finder.One(MostToBring) : [];
        return new RecipeResult.NoHeap
        {
            Unused = [.. pantry.Usable.Select(part => part.Stock), .. pantry.LeftOut],
            Missing = fits && missing.Count == 0 ? finder.Two(MostToBring) : missing,
            Cautions = Cautions.For([], pantry.Refused),
            Notes = fits ? pantry.Notes : [.. pantry.Notes, Notes.SpaceTooSmall],
        };
    }

    private static RecipeResult.Solved Describe(Pantry pantry, Batch batch, RecipeRequest request)
    {
        var layers = Layers(batch);
        var used = layers.Select(layer => layer.Part.Material).ToList();
        var recipe = Write(batch, layers, request.Space);
        List<string> notes = [.. pantry.Notes];
        if (batch.Mass - batch.Dry > HeapLimits.MostMoisture * batch.Mass * (1 + 1e-6))
        {
            notes.Add(Notes.Wet);
        }

        notes.AddRange(used.Where(material => material.Form == MaterialForm.Liquid)
            .Select(material => Notes.LiquidPrefix + material.Key));
        return new RecipeResult.Solved(recipe)
        {
            Unused = [.. Unused(batch), .. pantry.LeftOut],
            Missing = batch.Litres < SmallLitres ? Improvement(pantry, batch, request) : [],
            Cautions = Cautions.For(used, pantry.Refused),
            Notes = notes,
        };
    }

    private static IReadOnlyList<Missing> Improvement(Pantry pantry, Batch batch, RecipeRequest request) =>
        new MissingFinder(pantry.Usable, request, batch.Litres * Quarter, HeapLimits.MostMoisture).One(DayLoad);

    private static List<(Ingredient Part, double Amount)> Layers(Batch batch) =>
    [
        .. batch.Ingredients.Zip(batch.Halves, (part, halves) => (Part: part, Amount: halves / 2.0))
            .Where(layer => layer.Amount > 0),
    ];

    private static Recipe Write(Batch batch, List<(Ingredient Part, double Amount)> layers, HeapSpace space)
    {
        var water = Water(batch);
        return new Recipe
        {
            Rounds = batch.Rounds,
            PerRound =
            [
                .. layers.Select(layer => new Layer(
                    layer.Part.Material.Key, layer.Part.Material.Role, layer.Amount, layer.Part.Stock.Measure)),
            ],
            Total = [.. layers.Select(layer => layer.Part.Stock with { Amount = layer.Amount * batch.Rounds })],
            Water = water,
            Volume = Volume.FromLitres(batch.Litres),
            Mass = Mass.FromKilograms(batch.Mass + water.Litres),
            CarbonNitrogen = batch.CarbonNitrogen,
            Moisture = Fraction.FromValue(1 - (batch.Dry / (batch.Mass + water.Litres))),
            Dimensions = HeapShape.Of(batch.Litres, batch.Rounds, space),
            Heaps = layers.Min(layer => (int)((layer.Part.Stock.Amount / (layer.Amount * batch.Rounds)) + 1e-9)),
        };
    }

    /// <summary>Water for the heap: to 55 %, or as much as its bulk density bears. [L]</summary>
    private static Volume Water(Batch batch)
    {
        var moisture = Fraction.FromValue(1 - (batch.Dry / batch.Mass));
        var sought = MixSolver.WaterToReach(
            Mass.FromKilograms(batch.Mass), moisture, Fraction.FromValue(HeapLimits.SoughtMoisture));
        var bearable = (HeapLimits.MostDensity * batch.Litres) - batch.Mass;
        return Volume.FromLitres(Math.Max(0, Math.Min(sought.Litres, bearable)));
    }

    private static IEnumerable<StockItem> Unused(Batch batch) => batch.Ingredients
        .Zip(batch.Halves, (part, halves) => (part.Stock, Used: halves * batch.Rounds / 2.0))
        .Select(item => item.Stock with { Amount = item.Stock.Amount - item.Used })
        .Where(item => item.Amount > 1e-9);
}
