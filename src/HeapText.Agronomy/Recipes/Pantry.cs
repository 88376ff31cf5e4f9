using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;

namespace HeapText.Agronomy.Recipes;

/// <summary>A stock sorted out: what can go in, in building order, and what cannot and why.</summary>
/// <param name="Usable">In building order, one entry for each material, measure and set of figures.</param>
/// <param name="LeftOut">What cannot go in.</param>
/// <param name="Refused">Keys of materials that never go in.</param>
/// <param name="Notes">Why the rest was left out.</param>
internal sealed record Pantry(
    IReadOnlyList<Ingredient> Usable,
    IReadOnlyList<StockItem> LeftOut,
    IReadOnlyList<string> Refused,
    IReadOnlyList<string> Notes)
{
    private const string Lime = "lime";

    internal static Pantry Of(RecipeRequest request)
    {
        var items = Merge(request.Stock);
        var known = items.Select(item => Ingredient.From(item, request.Measures)).OfType<Ingredient>();
        var usable = NoLimeWithManure([.. known]);
        var leftOut = items.Except(usable.Select(ingredient => ingredient.Stock)).ToList();
        var refused = leftOut.Select(item => item.Material).Where(IsRefused).Distinct().ToList();
        string[] notes = leftOut.Exists(item => item.Material == Lime) ? [Recipes.Notes.LimeWithManure] : [];
        return new Pantry(usable, leftOut, refused, notes);
    }

    /// <summary>These ingredients with more of one: its own entry grows where it has one.</summary>
    internal static List<Ingredient> Add(IEnumerable<Ingredient> usable, Ingredient more)
    {
        List<Ingredient> all = [.. usable];
        var place = all.FindIndex(own => IsSame(own.Stock, more.Stock));
        if (place < 0)
        {
            all.Add(more);
        }
        else
        {
            var stock = all[place].Stock;
            all[place] = all[place] with { Stock = stock with { Amount = stock.Amount + more.Stock.Amount } };
        }

        return all;
    }

    /// <summary>These ingredients without lime, where there is manure from which it would drive nitrogen.</summary>
    internal static List<Ingredient> NoLimeWithManure(List<Ingredient> all) =>
        all.Exists(ingredient => ingredient.Material.Role == MaterialRole.Manure)
            ? all.FindAll(ingredient => ingredient.Material.Key != Lime)
            : all;

    /// <summary>Whether two items are of one material in one measure, with the same figures.</summary>
    internal static bool IsSame(StockItem one, StockItem other) => Kind(one) == Kind(other);

    private static bool IsRefused(string key) => MaterialTable.TryFind(key, out var material) && material.IsRefused;

    private static (string Material, string Measure, GivenFigures Given) Kind(StockItem item) =>
        (item.Material, item.Measure, item.Given);

    private static List<StockItem> Merge(IEnumerable<StockItem> stock) =>
    [
        .. stock.Where(item => item.Amount > 0)
            .GroupBy(Kind)
            .Select(same => same.First() with { Amount = same.Select(item => item.Amount).Order().Sum() })
            .OrderBy(item => RoleOf(item.Material))
            .ThenBy(item => FormOf(item.Material))
            .ThenBy(item => item.Material, StringComparer.Ordinal)
            .ThenBy(item => item.Measure, StringComparer.Ordinal)
            .ThenBy(item => (item.Given.CarbonPercent, item.Given.NitrogenPercent, item.Given.CarbonNitrogen,
                item.Given.MoisturePercent, item.Given.DensityKgPerM3)),
    ];

    private static MaterialRole RoleOf(string key) =>
        MaterialTable.TryFind(key, out var material) ? material.Role : MaterialRole.Refused;

    // Coarse stalks lie under the rest of their role, as the base that lets air in.
    private static bool FormOf(string key) =>
        !(MaterialTable.TryFind(key, out var material) && material.Form == MaterialForm.Coarse);
}
