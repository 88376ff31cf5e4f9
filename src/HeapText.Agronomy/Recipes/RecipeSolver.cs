using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes;

/// <summary>
/// Turns what a household has into a heap: small amounts a round, a number of rounds, water, dimensions.
/// </summary>
public static class RecipeSolver
{
    /// <summary>Most that one may be asked to bring before two materials are tried. [L] Chosen: three heaps.</summary>
    private const double MostToBring = 3000;

    /// <summary>A heap below so many of the smallest is helped to grow. Chosen.</summary>
    private const double SmallHeaps = 2;

    /// <summary>What a household carries in a day beside its work. [L] Chosen: ten wheelbarrows.</summary>
    private const double DayLoad = 650;

    /// <summary>An improvement worth a walk.</summary>
    private const double Quarter = 1.25;

    /// <summary>Different further heaps that are planned. Chosen.</summary>
    private const int MostMore = 10;

    /// <summary>
    /// The best heap of a stock: limits first, then volume, C/N sure to stay in 20-40, C/N near 30, few leftovers,
    /// whole measures.
    /// </summary>
    /// <param name="request">Stock, measures, room and method.</param>
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
        var batch = new HeapSearch(pantry.Usable, request.Room, HeapLimits.MostMoisture).Best()
            ?? new HeapSearch(pantry.Usable, request.Room, HeapLimits.MostMoistureWhenWet).Best();
        return batch is null ? Refuse(pantry, request) : Describe(pantry, batch, request);
    }

    private static RecipeResult.NoHeap Refuse(Pantry pantry, RecipeRequest request)
    {
        var fits = request.Room.FitsAny();
        var finder = new MissingFinder(
            pantry.Usable, request, request.Method.Bounds.LeastLitres, HeapLimits.MostMoistureWhenWet);
        IReadOnlyList<Missing> missing = fits ? finder.One(MostToBring) : [];
        return new RecipeResult.NoHeap
        {
            Unused = [.. pantry.Usable.Select(part => part.Stock), .. pantry.LeftOut],
            Missing = fits && missing.Count == 0 ? finder.Two(MostToBring) : missing,
            Cautions = Cautions.For([], pantry.Refused, request.Method.Bounds.Form),
            Notes = fits ? pantry.Notes : [.. pantry.Notes, Notes.SpaceTooSmall],
        };
    }

    private static RecipeResult.Solved Describe(Pantry pantry, Batch batch, RecipeRequest request)
    {
        var recipe = RecipeWriter.Write(batch, request.Room);
        var used = batch.Ingredients.Zip(batch.Halves).Where(part => part.Second > 0)
            .Select(part => part.First.Material).ToList();
        var left = RecipeWriter.Leave(batch, recipe.Heaps);
        var more = request.WithMore ? More(ref left, request.Room) : [];
        return new RecipeResult.Solved(recipe)
        {
            More = more,
            Unused = [.. RecipeWriter.Leave(batch, heaps: 1).Select(part => part.Stock), .. pantry.LeftOut],
            Left = [.. left.Select(part => part.Stock), .. pantry.LeftOut],
            Missing = batch.Litres < SmallHeaps * request.Method.Bounds.LeastLitres
                ? Improvement(pantry, batch, request)
                : [],
            Cautions = Cautions.For(
                [.. used, .. MaterialsOf(more)], pantry.Refused, request.Method.Bounds.Form),
            Notes = [.. pantry.Notes, .. NotesOf(batch, used, recipe.CarbonNitrogenRange)],
        };
    }

    private static IEnumerable<Material> MaterialsOf(IEnumerable<Recipe> heaps)
    {
        foreach (var layer in heaps.SelectMany(heap => heap.PerRound))
        {
            if (MaterialTable.TryFind(layer.Material, out var material)) yield return material;
        }
    }

    /// <summary>
    /// Heaps of what is left, none wetter than 60 %: what is too wet for that can wait for dry stuff.
    /// </summary>
    private static List<Recipe> More(ref IReadOnlyList<Ingredient> left, HeapRoom room)
    {
        List<Recipe> more = [];
        while (more.Count < MostMore && new HeapSearch(left, room, HeapLimits.MostMoisture).Best() is { } batch)
        {
            more.Add(RecipeWriter.Write(batch, room));
            left = RecipeWriter.Leave(batch, more[^1].Heaps);
        }

        return more;
    }

    private static IEnumerable<string> NotesOf(Batch batch, List<Material> used, RatioRange range)
    {
        const double rounding = 1e-6;
        var isWet = batch.Mass - batch.Dry > HeapLimits.MostMoisture * batch.Mass * (1 + rounding);
        string[] wet = isWet ? [Notes.Wet] : [];
        var liquids = used.Where(material => material.Form == MaterialForm.Liquid)
            .Select(material => Notes.LiquidPrefix + material.Key);
        return [.. wet, .. range.Notes(), .. liquids];
    }

    private static IReadOnlyList<Missing> Improvement(Pantry pantry, Batch batch, RecipeRequest request) =>
        new MissingFinder(pantry.Usable, request, batch.Litres * Quarter, HeapLimits.MostMoisture).One(DayLoad);
}
