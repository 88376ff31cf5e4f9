namespace HeapText.Agronomy.Recipes.Village;

/// <summary>What neighbours give each other so that more of them can build.</summary>
public sealed record VillagePlan
{
    /// <summary>What is carried, in whole measures; empty when nothing helps.</summary>
    public required IReadOnlyList<Move> Moves { get; init; }

    /// <summary>Every household, in the order given.</summary>
    public required IReadOnlyList<HouseholdPlan> Households { get; init; }

    /// <summary>
    /// About what has to come from outside so that the households still without a heap can build one: an entry a role.
    /// </summary>
    public required IReadOnlyList<Missing> Lacking { get; init; }

    /// <summary>What the households that build have left once all their heaps stand.</summary>
    public required IReadOnlyList<StockItem> Surplus { get; init; }

    /// <summary>
    /// Whether no plan lets more households build, nor as many with less carried; always sought in small villages.
    /// </summary>
    public required bool IsProven { get; init; }
}

/// <summary>Something carried from one household to another.</summary>
/// <param name="From">Name of who gives.</param>
/// <param name="To">Name of who receives.</param>
/// <param name="Material">Stable key.</param>
/// <param name="Amount">Whole. [measures]</param>
/// <param name="Measure">Stable key; the giver's.</param>
/// <param name="Litres">Space the load takes. [L]</param>
public sealed record Move(string From, string To, string Material, int Amount, string Measure, double Litres);

/// <summary>What becomes of a household.</summary>
/// <param name="Name">As given.</param>
/// <param name="Before">Whether it could build a heap of its own stock.</param>
/// <param name="After">What it can build once the moves are made.</param>
public sealed record HouseholdPlan(string Name, bool Before, RecipeResult After)
{
    /// <summary>Whether it builds once the moves are made.</summary>
    public bool Builds => After is RecipeResult.Solved;
}
