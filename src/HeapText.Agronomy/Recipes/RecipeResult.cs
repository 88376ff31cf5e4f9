using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes;

/// <summary>What can be built from a stock.</summary>
public abstract record RecipeResult
{
    private RecipeResult() { }

    /// <summary>What one heap leaves of the stock; all of it when there is no heap.</summary>
    public required IReadOnlyList<StockItem> Unused { get; init; }

    /// <summary>
    /// What to bring in addition: so that a heap can be built, or so that a small one grows; may be empty.
    /// </summary>
    public required IReadOnlyList<Missing> Missing { get; init; }

    /// <summary>Keys of the cautions that go with this stock; the list is in <see cref="Cautions"/>.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Keys of remarks; the list is in <see cref="Notes"/>.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>A heap can be built.</summary>
    /// <param name="Recipe">How.</param>
    public sealed record Solved(Recipe Recipe) : RecipeResult
    {
        /// <summary>
        /// Further heaps of what <see cref="Recipe.Heaps"/> of the first leave, each different and in this order; empty
        /// unless asked for.
        /// </summary>
        public required IReadOnlyList<Recipe> More { get; init; }

        /// <summary>What stays behind once all heaps named here stand.</summary>
        public required IReadOnlyList<StockItem> Left { get; init; }
    }

    /// <summary>No heap within the limits can be built from this stock.</summary>
    public sealed record NoHeap : RecipeResult;
}

/// <summary>Something to bring in addition to the stock.</summary>
/// <param name="Material">Stable key.</param>
/// <param name="Role">What it does in the heap.</param>
/// <param name="Amount">Whole measures. [measures]</param>
/// <param name="Measure">Stable key.</param>
/// <param name="Why">What the stock suffers from.</param>
/// <param name="Substitutes">Keys of the same role of which the same amount would do as well.</param>
public sealed record Missing(
    string Material, MaterialRole Role, double Amount, string Measure, Lack Why, IReadOnlyList<string> Substitutes);

/// <summary>What a stock suffers from.</summary>
public enum Lack
{
    /// <summary>Not enough of it for a heap that heats.</summary>
    TooLittle,

    /// <summary>It would stand in its own water.</summary>
    TooWet,

    /// <summary>C/N below 25.</summary>
    TooMuchNitrogen,

    /// <summary>C/N above 40.</summary>
    TooMuchCarbon,
}
