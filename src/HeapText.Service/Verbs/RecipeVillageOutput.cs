using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Service.Verbs;

/// <summary>What <c>recipe</c> writes for a village.</summary>
internal sealed record RecipeVillageOutput(VillageOutput Village)
{
    internal static RecipeVillageOutput From(VillagePlan plan) => new(new VillageOutput(
        [.. plan.Moves.Select(move => new MoveOutput(move.From, move.To, move.Material, move.Amount, move.Measure))],
        [.. plan.Households.Select(HouseholdOutput.From)],
        plan.Households.Count(household => household.Before),
        plan.Households.Count(household => household.Builds),
        plan.Moves.Sum(move => move.Litres),
        [.. plan.Lacking.Select(MissingOutput.From)],
        [.. plan.Surplus.Select(AmountOutput.From)],
        plan.IsProven));
}

/// <summary>What neighbours give each other; <c>proven</c> when no plan is better.</summary>
internal sealed record VillageOutput(
    IReadOnlyList<MoveOutput> Moves,
    IReadOnlyList<HouseholdOutput> Households,
    int HeapsBefore,
    int HeapsAfter,
    double CarriedLitres,
    IReadOnlyList<MissingOutput> Lacking,
    IReadOnlyList<AmountOutput> Surplus,
    bool Proven);

/// <summary>Something carried from one household to another.</summary>
internal sealed record MoveOutput(string From, string To, string Material, int Amount, string Measure);

/// <summary>Whether a household can build before and after the moves, and the heap it builds then.</summary>
internal sealed record HouseholdOutput(
    string Name, bool Before, bool After, HeapOutput? Heap, IReadOnlyList<string> Cautions, IReadOnlyList<string> Notes)
{
    internal static HouseholdOutput From(HouseholdPlan plan) => new(
        plan.Name,
        plan.Before,
        plan.Builds,
        plan.After is RecipeResult.Solved(var recipe) ? HeapOutput.From(recipe) : null,
        plan.After.Cautions,
        plan.After.Notes);
}
