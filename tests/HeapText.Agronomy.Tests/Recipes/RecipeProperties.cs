using CsCheck;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

public class RecipeProperties
{
    private static readonly Gen<StockItem[]> Stock = Gen.Int.Select(seed => RandomStocks.Next(new Random(seed)));

    [Fact]
    public void Recipe_WhateverTheOrderOfTheStock_IsTheSame() => Gen.Select(Stock, Gen.Int).Sample((stock, seed) =>
    {
        var shuffled = (StockItem[])stock.Clone();
        new Random(seed).Shuffle(shuffled);

        var (result, other) = (Solve(stock), Solve(shuffled));

        Assert.Equivalent(result, other, strict: true);
    }, iter: 300);

    [Fact]
    public void Volume_OfALargerStock_IsNoSmaller() => Gen.Select(Stock, Gen.Double[1, 3]).Sample((stock, factor) =>
    {
        var larger = Array.ConvertAll(stock, item => item with { Amount = item.Amount * factor });

        // A wet heap is a last resort: with more to choose from, a drier and perhaps smaller one is right.
        if (Solve(stock) is RecipeResult.Solved before && !before.Notes.Contains("wet"))
        {
            var after = Assert.IsType<RecipeResult.Solved>(Solve(larger)).Recipe;
            Assert.True(after.Volume.Litres >= before.Recipe.Volume.Litres * 0.999);
        }
    }, iter: 300);

    [Fact]
    public void Stock_InTwoEntries_CountsAsOne() => Stock.Sample(stock =>
    {
        var split = stock.SelectMany(item => new[]
        {
            item with { Amount = item.Amount * 0.25 },
            item with { Amount = item.Amount * 0.75 },
        });

        Assert.Equivalent(Solve(stock), Solve([.. split]), strict: true);
    }, iter: 100);

    [Fact]
    public void Mass_OfARecipe_IsThatOfItsPartsAndWater() => Stock.Sample(stock =>
    {
        if (Solve(stock) is RecipeResult.Solved(var recipe))
        {
            var parts = recipe.Total.Select(Part.Of).ToList();
            var dry = recipe.Mass.Kilograms * (1 - recipe.Moisture.Value);

            Close(parts.Sum(part => part.Mass) + recipe.Water.Litres, recipe.Mass.Kilograms);
            Close(parts.Sum(part => part.Dry), dry);
        }
    }, iter: 300);

    [Fact]
    public void CarbonNitrogen_OfARecipe_LiesBetweenThatOfItsParts() => Stock.Sample(stock =>
    {
        if (Solve(stock) is RecipeResult.Solved(var recipe))
        {
            var ratios = recipe.Total.Select(Part.Of).Where(part => part.Nitrogen > 0 && part.Key != "charcoal")
                .Select(part => part.Carbon / part.Nitrogen).ToList();

            Assert.InRange(recipe.CarbonNitrogen, ratios.Min() * (1 - 1e-9), ratios.Max() * (1 + 1e-9));
        }
    }, iter: 300);

    [Fact]
    public void Water_PouredOnARecipe_NeverLowersItsMoisture() =>
        Gen.Select(Stock, Gen.Double[0, 500]).Sample((stock, litres) =>
    {
        if (Solve(stock) is RecipeResult.Solved(var recipe))
        {
            MixPart[] parts = [.. recipe.Total.Select(Part.Of).Select(part =>
                new MixPart(part.Key, part.Mass, GivenFigures.None)), WaterOf(recipe.Water.Litres)];

            var (asTold, wetter) = (Mix(parts), Mix([.. parts, WaterOf(litres)]));

            Close(recipe.Moisture.Value, asTold.Moisture.Value);
            Assert.True(wetter.Moisture.Value >= asTold.Moisture.Value - 1e-12);
        }
    }, iter: 300);

    // As many rounds of layers twice or three times as thick are within the limits, so the heap is no smaller than
    // that; nor is it larger than what finer layers can gain, which is little when a layer counts many measures.
    [Fact]
    public void Stock_Scaled_ScalesTheRecipeUpToAFullHeap() => Gen.Select(Stock, Gen.Int[2, 3]).Sample((stock, times) =>
    {
        const double mostOfThreeRounds = 6000;
        var fine = Array.ConvertAll(stock, item => item with { Amount = item.Amount * 20, Measure = "litre" });
        if (Solve(fine) is RecipeResult.Solved one && one.Recipe.Volume.Litres * times <= mostOfThreeRounds
            && !one.Notes.Contains("wet"))
        {
            var more = Solve(Array.ConvertAll(fine, item => item with { Amount = item.Amount * times }));

            var volume = Assert.IsType<RecipeResult.Solved>(more).Recipe.Volume.Litres;
            Assert.InRange(volume / (one.Recipe.Volume.Litres * times), 0.999, 1.05);
        }
    }, iter: 300);

    private static MixPart WaterOf(double litres) => new(null, litres, new GivenFigures
    {
        MoisturePercent = 100,
        CarbonPercent = 0,
        NitrogenPercent = 0,
    });

    private static Mix Mix(MixPart[] parts) =>
        Assert.IsType<MixResult.Solved>(MixSolver.Solve(new MixProblem { Parts = parts })).Mix;

    private static void Close(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Max(1, Math.Abs(expected)), $"{expected} {actual}");

    private static RecipeResult Solve(StockItem[] stock) => RecipeSolver.Solve(new RecipeRequest { Stock = stock });
}
