using CsCheck;
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

    private static RecipeResult Solve(StockItem[] stock) => RecipeSolver.Solve(new RecipeRequest { Stock = stock });
}
