using System.Collections.Concurrent;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>
/// Agreement with Google OR-Tools CP-SAT (developers.google.com/optimization), an independent exact solver.
/// </summary>
public class OptimalityTests
{
    private const int Stocks = 1000;
    private const double Within = 1.001;
    private const double LeastLitres = 1000;

    // A proof may run out of time on a busy machine; more than this many of them would make the test worthless.
    private const int MostUnproved = 5;

    [Fact]
    public void Volume_OfAThousandRandomStocks_IsWithinAThousandthOfTheProvedBest()
    {
        var random = new Random(20_261);
        var stocks = Enumerable.Range(0, Stocks).Select(_ => RandomStocks.Next(random)).ToList();
        var (wrong, unproved) = (new ConcurrentBag<string>(), 0);

        Parallel.ForEach(stocks, stock =>
        {
            var verdicts = Check(stock).ToList();
            if (verdicts.Contains(null))
            {
                Interlocked.Increment(ref unproved);
            }

            if (verdicts.Contains(true))
            {
                wrong.Add(string.Join(", ", stock.Select(item => $"{item.Material} {item.Amount} {item.Measure}")));
            }
        });

        Assert.Empty(wrong);
        Assert.InRange(unproved, 0, MostUnproved);
    }

    // Guards the test above: an oracle with a limit too many would agree with any answer.
    [Fact]
    public void Oracle_AskedForWhatTheSolverFound_FindsItToo()
    {
        var random = new Random(20_262);
        var found = 0;

        while (found < 200)
        {
            var stock = RandomStocks.Next(random);
            if (RecipeSolver.Solve(new RecipeRequest { Stock = stock }) is RecipeResult.Solved heap)
            {
                var moisture = heap.Notes.Contains("wet") ? 0.65 : 0.60;
                Assert.True(CpSatOracle.Exists(stock, heap.Recipe.Volume.Litres * 0.9999, moisture));
                found++;
            }
        }
    }

    /// <summary>
    /// Whether something better exists than what the solver answered: true, false, or null for no proof.
    /// </summary>
    private static IEnumerable<bool?> Check(StockItem[] stock)
    {
        var result = RecipeSolver.Solve(new RecipeRequest { Stock = stock });
        var isWet = result.Notes.Contains("wet");
        if (result is RecipeResult.Solved(var recipe))
        {
            yield return CpSatOracle.Exists(stock, recipe.Volume.Litres * Within, isWet ? 0.65 : 0.60);
        }

        if (isWet)
        {
            yield return CpSatOracle.Exists(stock, LeastLitres, 0.60);
        }

        if (result is RecipeResult.NoHeap)
        {
            yield return CpSatOracle.Exists(stock, LeastLitres, 0.65);
        }
    }
}
