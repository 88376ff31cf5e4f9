using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes;

/// <summary>Writes out a heap that was found: layers, totals, water, dimensions.</summary>
internal static class RecipeWriter
{
    private const double Rounding = 1e-9;

    internal static Recipe Write(Batch batch, HeapRoom room)
    {
        var water = Water(batch);
        List<(Ingredient Part, double Amount)> layers =
        [
            .. batch.Ingredients.Zip(batch.Halves, (part, halves) => (Part: part, Amount: halves / 2.0))
                .Where(layer => layer.Amount > 0),
        ];
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
            CarbonNitrogenRange = batch.CarbonNitrogenRange,
            Moisture = Fraction.FromValue(1 - (batch.Dry / (batch.Mass + water.Litres))),
            Dimensions = HeapShape.Of(batch.Litres, batch.Rounds, room),
            Heaps = layers.Min(layer =>
                (int)((layer.Part.Stock.Amount / (layer.Amount * batch.Rounds)) + Rounding)),
        };
    }

    /// <summary>The ingredients of a batch with what so many heaps of it leave, those used up left out.</summary>
    internal static IReadOnlyList<Ingredient> Leave(Batch batch, int heaps) =>
    [
        .. batch.Ingredients
            .Zip(batch.Halves, (part, halves) => (part, Used: halves * batch.Rounds * heaps / 2.0))
            .Select(item => (item.part, Left: item.part.Stock.Amount - item.Used))
            .Where(item => item.Left > Rounding)
            .Select(item => item.part with { Stock = item.part.Stock with { Amount = item.Left } }),
    ];

    /// <summary>Water for the heap: to 55 %, or as much as its bulk density bears. [L]</summary>
    private static Volume Water(Batch batch)
    {
        var moisture = Fraction.FromValue(1 - (batch.Dry / batch.Mass));
        var sought = MixSolver.WaterToReach(
            Mass.FromKilograms(batch.Mass), moisture, Fraction.FromValue(HeapLimits.SoughtMoisture));
        var bearable = (HeapLimits.MostDensity * batch.Litres) - batch.Mass;
        return Volume.FromLitres(Math.Max(0, Math.Min(sought.Litres, bearable)));
    }
}
