using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>The hard limits of docs/agronomy/recipe.md, written a second time and looked up by hand.</summary>
internal static class Limits
{
    private const double Tolerance = 1e-6;

    internal static IEnumerable<string> Broken(
        StockItem[] stock, RecipeResult.Solved solved, HeapSpace space, HeapMethod? method = null)
    {
        var bounds = (method ?? HeapMethods.Usual).Bounds;
        return
        [
            .. Broken(stock, solved.Recipe, solved.Notes.Contains("wet"), space, bounds),
            .. solved.More.SelectMany(recipe => Broken(stock, recipe, wet: false, space, bounds)),
            .. Amounts(stock, solved),
        ];
    }

    private static IEnumerable<string> Broken(
        StockItem[] stock, Recipe recipe, bool wet, HeapSpace space, HeapBounds bounds)
    {
        var parts = recipe.Total.Select(Part.Of).ToList();
        var (litres, mass, dry) = (parts.Sum(p => p.Litres), parts.Sum(p => p.Mass), parts.Sum(p => p.Dry));
        var food = parts.Where(p => p.Role != MaterialRole.Charcoal).ToList();
        var ratio = food.Sum(p => p.Dry * p.Carbon) / food.Sum(p => p.Dry * p.Nitrogen);
        var watered = mass + recipe.Water.Litres;
        var size = recipe.Dimensions;
        (string, double, double, double)[] limits =
        [
            ("rounds", recipe.Rounds, 3, 10),
            ("cn", ratio, 25, 40),
            ("cn told", recipe.CarbonNitrogen, ratio, ratio),
            ("moisture before", (mass - dry) / mass, 0, wet ? 0.65 : 0.60),
            ("moisture after", recipe.Moisture.Value, 0.50, wet ? 0.65 : 0.60),
            ("moisture told", recipe.Moisture.Value, 1 - (dry / watered), 1 - (dry / watered)),
            ("mass told", recipe.Mass.Kilograms, watered, watered),
            ("density", recipe.Mass.Kilograms / litres, 0, 0.640),
            ("litres", litres, bounds.LeastLitres, 12_000),
            ("litres told", recipe.Volume.Litres, litres, litres),
            ("width", size.WidthM, bounds.NarrowestM, Math.Min(bounds.WidestM, space.WidthM ?? bounds.WidestM)),
            ("length", size.LengthM, size.WidthM, Math.Min(bounds.LongestM, space.LengthM ?? bounds.LongestM)),
            ("height", size.HeightM, 0, Math.Min(bounds.HighestM, space.HeightM ?? bounds.HighestM)),
            ("round height", size.HeightM / recipe.Rounds, 0.15, 0.25),
            ("shape", Base(size, bounds) * size.HeightM * 1000 / litres, 0.985, 1.015),
            .. Shares(parts, litres),
            ("lime", HasManure(stock) ? parts.Where(part => part.Key == "lime").Sum(part => part.Litres) : 0, 0, 0),
        ];
        foreach (var (name, value, least, most) in limits)
        {
            if (!(value >= least - (Tolerance * Math.Abs(least)) && value <= most + (Tolerance * Math.Abs(most))))
            {
                yield return $"{name}: {value} not in {least}..{most}";
            }
        }
    }

    private static bool HasManure(StockItem[] stock) =>
        stock.Any(item => MaterialTable.TryFind(item.Material, out var known) && known.Role == MaterialRole.Manure);

    private static double Base(HeapDimensions size, HeapBounds bounds) => bounds.Form == HeapForm.Ring
        ? Math.PI * Math.Pow(size.WidthM / 2, 2)
        : size.WidthM * size.LengthM;

    private static IEnumerable<(string, double, double, double)> Shares(List<Part> parts, double litres)
    {
        double Share(Func<Part, bool> isIn) => parts.Where(isIn).Sum(part => part.Litres) / litres;
        yield return ("earth", Share(part => part.Role == MaterialRole.Earth), 0, 0.10);
        yield return ("charcoal", Share(part => part.Role == MaterialRole.Charcoal), 0, 0.10);
        yield return ("mineral", Share(part => part.Role == MaterialRole.Mineral), 0, 0.03);
        yield return ("wood ash", Share(part => part.Key == "wood-ash"), 0, 0.02);
        yield return ("feed", Share(part => part.Role == MaterialRole.Feed), 0, 0.05);
        yield return ("manure", Share(part => part.Role == MaterialRole.Manure), 0, 0.50);
        yield return ("poultry", Share(part => part.Key == "poultry-manure"), 0, 0.20);
    }

    private static IEnumerable<string> Amounts(StockItem[] stock, RecipeResult.Solved solved)
    {
        var recipe = solved.Recipe;
        foreach (var layer in recipe.PerRound.Where(layer => layer.Amount * 2 % 1 != 0 || layer.Amount <= 0))
        {
            yield return $"{layer.Material}: {layer.Amount} is not in half measures";
        }

        foreach (var item in stock)
        {
            var used = recipe.PerRound.Where(layer => layer.Material == item.Material && layer.Measure == item.Measure)
                .Sum(layer => layer.Amount) * recipe.Rounds;
            var left = solved.Unused.Where(other => other.Material == item.Material && other.Measure == item.Measure)
                .Sum(other => other.Amount);
            var isTooMuch = used > item.Amount + 1e-9 || used * recipe.Heaps > item.Amount + 1e-6;
            if (isTooMuch || Math.Abs(used + left - item.Amount) > 1e-9)
            {
                yield return $"{item.Material}: {used} used, {left} left of {item.Amount} in {recipe.Heaps} heaps";
            }

            var inAll = solved.More.Prepend(recipe)
                .Sum(heap => heap.Heaps * heap.Total.Where(other => IsSame(other, item)).Sum(other => other.Amount));
            var leftOfAll = solved.Left.Where(other => IsSame(other, item)).Sum(other => other.Amount);
            if (Math.Abs(inAll + leftOfAll - item.Amount) > 1e-6)
            {
                yield return $"{item.Material}: {inAll} in all heaps, {leftOfAll} left of {item.Amount}";
            }
        }
    }

    private static bool IsSame(StockItem one, StockItem other) =>
        one.Material == other.Material && one.Measure == other.Measure;
}
