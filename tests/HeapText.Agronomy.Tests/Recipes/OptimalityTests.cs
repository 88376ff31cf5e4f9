using System.Collections.Concurrent;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>
/// Agreement with Google OR-Tools CP-SAT (developers.google.com/optimization), an independent exact solver.
/// </summary>
public class OptimalityTests
{
    private const double Within = 1.001;
    private const int Threads = 2;

    // A proof may run out of time on a busy machine; more than one in two hundred would make the test worthless.
    private const int StocksForOneUnproved = 200;

    [Theory]
    [InlineData(HeapMethods.UsualKey, 5000, 20_261)]
    [InlineData("dry-season-pit", 300, 20_263)]
    [InlineData("small-ring", 300, 20_264)]
    public void Volume_OfRandomStocks_IsWithinAThousandthOfTheProvedBest(string method, int count, int seed)
    {
        var random = new Random(seed);
        var stocks = Enumerable.Range(0, count).Select(_ => RandomStocks.Next(random)).ToList();
        var (wrong, unproved) = (new ConcurrentBag<string>(), 0);

        Parallel.ForEach(stocks, new ParallelOptions { MaxDegreeOfParallelism = Threads }, stock =>
        {
            var verdicts = Check(stock, HeapMethods.All[method]).ToList();
            if (verdicts.Contains(null))
            {
                Interlocked.Increment(ref unproved);
            }

            if (verdicts.Contains(true))
            {
                wrong.Add(string.Join(", ", stock.Select(item => $"{item.Material} {item.Amount} {item.Measure}")));
            }
        });

        Assert.Equal("", string.Join("\n", wrong));
        Assert.InRange(unproved, 0, count / StocksForOneUnproved);
    }

    // Guards the test above: an oracle with a limit too many would agree with any answer.
    [Theory]
    [InlineData(HeapMethods.UsualKey)]
    [InlineData("dry-season-pit")]
    [InlineData("small-ring")]
    public void Oracle_AskedForWhatTheSolverFound_FindsItToo(string key)
    {
        var random = new Random(20_262);
        var method = HeapMethods.All[key];
        var found = 0;

        while (found < 100)
        {
            var stock = RandomStocks.Next(random);
            if (RecipeSolver.Solve(new RecipeRequest { Stock = stock, Method = method }) is RecipeResult.Solved heap)
            {
                var moisture = heap.Notes.Contains("wet") ? 0.65 : 0.60;
                Assert.True(CpSatOracle.Exists(stock, heap.Recipe.Volume.Litres * 0.9999, moisture, method.Bounds));
                found++;
            }
        }
    }

    /// <summary>
    /// Whether something better exists than what the solver answered: true, false, or null for no proof.
    /// </summary>
    private static IEnumerable<bool?> Check(StockItem[] stock, HeapMethod method)
    {
        var result = RecipeSolver.Solve(new RecipeRequest { Stock = stock, Method = method });
        var isWet = result.Notes.Contains("wet");
        if (result is RecipeResult.Solved(var recipe))
        {
            var better = recipe.Volume.Litres * Within;
            yield return CpSatOracle.Exists(stock, better, isWet ? 0.65 : 0.60, method.Bounds);
        }

        if (isWet)
        {
            yield return CpSatOracle.Exists(stock, method.Bounds.LeastLitres, 0.60, method.Bounds);
        }

        if (result is RecipeResult.NoHeap)
        {
            yield return CpSatOracle.Exists(stock, method.Bounds.LeastLitres, 0.65, method.Bounds);
        }
    }
}
