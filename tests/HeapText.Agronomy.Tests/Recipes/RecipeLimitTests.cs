using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

public class RecipeLimitTests
{
    private const int Stocks = 1000;

    [Theory]
    [InlineData(11, null, null, null)]
    [InlineData(12, 1.37, 2.55, 1.1)]
    [InlineData(13, 1.2, null, 0.5)]
    [InlineData(17, 1.9, 1.337, null)]
    public void Recipe_OfAThousandRandomStocks_KeepsEveryLimit(int seed, double? width, double? length, double? height)
    {
        var random = new Random(seed);
        var space = new HeapSpace(width, length, height);
        var solved = 0;

        for (var i = 0; i < Stocks; i++)
        {
            var stock = RandomStocks.Next(random);
            if (RecipeSolver.Solve(new RecipeRequest { Stock = stock, Space = space }) is RecipeResult.Solved heap)
            {
                Assert.Empty(Limits.Broken(stock, heap, space));
                solved++;
            }
        }

        Assert.True(solved > Stocks / 4, $"only {solved} stocks made a heap: the check would say little");
    }

    [Theory]
    [InlineData("dry-season-pit", 21)]
    [InlineData("small-ring", 22)]
    [InlineData("slow-heap", 23)]
    public void Recipe_ByAnyMethod_KeepsItsBounds(string key, int seed)
    {
        var random = new Random(seed);
        var method = HeapMethods.All[key];
        var solved = 0;

        for (var i = 0; i < Stocks / 2; i++)
        {
            var stock = RandomStocks.Next(random);
            var request = new RecipeRequest { Stock = stock, Method = method, WithMore = true };
            if (RecipeSolver.Solve(request) is RecipeResult.Solved heap)
            {
                Assert.Empty(Limits.Broken(stock, heap, HeapSpace.Open, method));
                solved++;
            }
        }

        Assert.True(solved > Stocks / 8, $"only {solved} stocks made a heap: the check would say little");
    }

    [Fact]
    public void Missing_OfRandomStocksWithoutAHeap_MakesOneWhenBrought()
    {
        var random = new Random(14);
        var checkedStocks = 0;

        while (checkedStocks < 300)
        {
            var stock = RandomStocks.Next(random);
            if (RecipeSolver.Solve(new RecipeRequest { Stock = stock }) is not RecipeResult.NoHeap none)
            {
                continue;
            }

            Assert.InRange(none.Missing.Count, 1, 2);
            Assert.IsType<RecipeResult.Solved>(RecipeSolver.Solve(Bring(stock, none.Missing)));
            Assert.All(none.Missing, one => AssertLeast(stock, none.Missing, one));
            checkedStocks++;
        }
    }

    [Fact]
    public void Substitutes_OfRandomStocksWithoutAHeap_DoAsWell()
    {
        var random = new Random(15);
        var tried = 0;

        while (tried < 200)
        {
            var stock = RandomStocks.Next(random);
            var result = RecipeSolver.Solve(new RecipeRequest { Stock = stock });
            var missing = result is RecipeResult.NoHeap ? result.Missing : [];
            foreach (var (one, other) in missing.SelectMany(one => one.Substitutes.Select(other => (one, other))))
            {
                var swapped = missing.Select(item => item == one ? item with { Material = other } : item);

                Assert.IsType<RecipeResult.Solved>(RecipeSolver.Solve(Bring(stock, swapped)));
                tried++;
            }
        }
    }

    [Fact]
    public void Missing_OfSmallHeaps_MakesThemAQuarterLarger()
    {
        var random = new Random(16);
        var grown = 0;

        while (grown < 50)
        {
            var stock = RandomStocks.Next(random);
            var result = RecipeSolver.Solve(new RecipeRequest { Stock = stock });
            if (result is RecipeResult.Solved { Missing.Count: > 0 } small)
            {
                var after = RecipeSolver.Solve(Bring(stock, small.Missing));

                var larger = Assert.IsType<RecipeResult.Solved>(after).Recipe.Volume.Litres;
                Assert.True(larger >= small.Recipe.Volume.Litres * 1.25 * 0.999);
                grown++;
            }
        }
    }

    private static void AssertLeast(StockItem[] stock, IReadOnlyList<Missing> missing, Missing one)
    {
        var fewer = missing.Select(item => item == one ? item with { Amount = item.Amount - 1 } : item);

        Assert.IsType<RecipeResult.NoHeap>(RecipeSolver.Solve(Bring(stock, fewer)));
    }

    private static RecipeRequest Bring(StockItem[] stock, IEnumerable<Missing> missing) => new()
    {
        Stock = [.. stock, .. missing.Select(one => new StockItem(one.Material, one.Amount, one.Measure))],
    };
}
