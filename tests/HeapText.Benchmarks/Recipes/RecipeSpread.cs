using System.Diagnostics;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Tests.Recipes;

namespace HeapText.Benchmarks.Recipes;

/// <summary>How the time of a recipe spreads over many random stocks of so many materials.</summary>
internal static class RecipeSpread
{
    private const int Stocks = 500, Repeats = 5;

    internal static void Run(TextWriter output)
    {
        output.WriteLine("| materials | stocks | median ms | 9 of 10 below | most |");
        output.WriteLine("| --- | --- | --- | --- | --- |");
        foreach (var materials in (int[])[4, 8, 12])
        {
            var random = new Random(materials);
            var stocks = Endless(random).Where(stock => stock.Length == materials).Take(Stocks);
            var times = stocks.Select(Time).Order().ToList();
            output.WriteLine($"| {materials} | {Stocks} | {times[Stocks / 2]:0.000} | {times[Stocks * 9 / 10]:0.000} | "
                + $"{times[^1]:0.000} |");
        }
    }

    private static IEnumerable<StockItem[]> Endless(Random random)
    {
        while (true)
        {
            yield return RandomStocks.Next(random);
        }
    }

    /// <summary>The least of a few tries, so that what else the machine does stays out. [ms]</summary>
    private static double Time(StockItem[] stock)
    {
        var request = new RecipeRequest { Stock = stock };
        return Enumerable.Range(0, Repeats).Min(_ =>
        {
            var start = Stopwatch.GetTimestamp();
            RecipeSolver.Solve(request);
            return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        });
    }
}
