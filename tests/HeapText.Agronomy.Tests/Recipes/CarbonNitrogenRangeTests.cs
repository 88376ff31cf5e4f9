using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

public class CarbonNitrogenRangeTests
{
    private const int Stocks = 400;
    private const int Draws = 20;

    [Fact]
    public void Recipe_AsItsMaterialsVary_StaysInTwentyToFortyOrSaysSo()
    {
        var random = new Random(31);
        var (inside, outside) = (0, 0);

        for (var i = 0; i < Stocks; i++)
        {
            if (Solve(RandomStocks.Next(random)) is not RecipeResult.Solved heap)
            {
                continue;
            }

            var ratios = Enumerable.Range(0, Draws).Select(_ => Drawn(heap.Recipe, random)).ToList();
            var (low, high) = (ratios.Min(), ratios.Max());

            Assert.True(low >= 20 || heap.Notes.Contains("cn-uncertain-low"), $"{low}");
            Assert.True(high <= 40 || heap.Notes.Contains("cn-uncertain-high"), $"{high}");
            Assert.InRange(low, heap.Recipe.CarbonNitrogenRange.Low - 1e-6, heap.Recipe.CarbonNitrogen + 20);
            Assert.InRange(high, 0, heap.Recipe.CarbonNitrogenRange.High + 1e-6);
            inside += low >= 20 && high <= 40 ? 1 : 0;
            outside += low >= 20 && high <= 40 ? 0 : 1;
        }

        Assert.True(inside > 50 && outside > 50, $"{inside} inside, {outside} outside: the check would say little");
    }

    [Fact]
    public void Range_OfARecipe_EndsWhereAllMaterialsAreLowOrHigh()
    {
        var heap = Heap(new("maize-stover", 30, "wheelbarrow"), new("goat-manure", 10, "bucket"));

        double All(bool byCarbon, double place) => Ratio(heap.Recipe, _ => (byCarbon, place));

        Assert.Equal(Math.Min(All(true, 0), All(false, 0)), heap.Recipe.CarbonNitrogenRange.Low, 6);
        Assert.Equal(Math.Max(All(true, 1), All(false, 1)), heap.Recipe.CarbonNitrogenRange.High, 6);
    }

    [Fact]
    public void Range_OfMeasuredMaterials_IsAPoint()
    {
        var heap = Heap(
            new("rice-straw", 30, "wheelbarrow") { Given = new GivenFigures { CarbonNitrogen = 60 } },
            new("cow-dung", 8, "bucket") { Given = new GivenFigures { CarbonPercent = 36, NitrogenPercent = 1.8 } });

        Assert.Equal(heap.Recipe.CarbonNitrogen, heap.Recipe.CarbonNitrogenRange.Low, 9);
        Assert.Equal(heap.Recipe.CarbonNitrogen, heap.Recipe.CarbonNitrogenRange.High, 9);
        Assert.DoesNotContain(heap.Notes, note => note.StartsWith("cn-uncertain", StringComparison.Ordinal));
    }

    // With the nitrogen measured only the carbon varies, so both readings are one: N fixed.
    [Fact]
    public void Range_WithNitrogenMeasured_VariesTheCarbonAlone()
    {
        var heap = Heap(
            new("rice-straw", 30, "wheelbarrow") { Given = new GivenFigures { CarbonNitrogen = 60 } },
            new("cow-dung", 8, "bucket") { Given = new GivenFigures { NitrogenPercent = 1.8 } });
        Assert.True(MaterialTable.TryFind("cow-dung", out var dung));
        var range = dung.Figures!.CarbonNitrogen!;
        var parts = heap.Recipe.Total.Select(Part.Of).ToList();
        var straw = parts.Single(part => part.Key == "rice-straw");
        var wet = parts.Single(part => part.Key == "cow-dung");

        double With(double share) =>
            ((straw.Dry * straw.Carbon) + (wet.Dry * wet.Carbon * share))
            / ((straw.Dry * straw.Carbon / 60) + (wet.Dry * 0.018));

        Assert.Equal(With(range.Low / range.Typical), heap.Recipe.CarbonNitrogenRange.Low, 6);
        Assert.Equal(With(range.High / range.Typical), heap.Recipe.CarbonNitrogenRange.High, 6);
    }

    // Two browns of one volume, one of which varies far less: among heaps alike in volume the sure one is wished.
    [Fact]
    public void Recipe_WithAChoice_TakesTheSurerMaterials()
    {
        var sure = Heap(
            new("maize-stover", 200, "wheelbarrow"),
            new("cardboard", 200, "wheelbarrow"),
            new("goat-manure", 60, "bucket"),
            new("cow-dung", 60, "bucket"));

        Assert.InRange(sure.Recipe.CarbonNitrogenRange.Low, 20, 30);
        Assert.InRange(sure.Recipe.CarbonNitrogenRange.High, 30, 40);
    }

    private static RecipeResult Solve(StockItem[] stock) => RecipeSolver.Solve(new RecipeRequest { Stock = stock });

    private static RecipeResult.Solved Heap(params StockItem[] stock) =>
        Assert.IsType<RecipeResult.Solved>(Solve(stock));

    private static double Drawn(Recipe recipe, Random random)
    {
        var byCarbon = random.Next(2) == 0;
        return Ratio(recipe, _ => (byCarbon, random.Next(3) == 0 ? random.Next(2) : random.NextDouble()));
    }

    /// <summary>
    /// C/N by <see cref="MixSolver"/>, each material at a place in its range, 0 low to 1 high; its carbon or its
    /// nitrogen gives way. Carbon beyond what a mix takes (110 % of dry matter in the driest wood) is worked out by
    /// hand.
    /// </summary>
    private static double Ratio(Recipe recipe, Func<Part, (bool ByCarbon, double Place)> draw)
    {
        var (carbon, nitrogen) = (0.0, 0.0);
        var mixed = new List<MixPart>();
        foreach (var part in recipe.Total.Select(Part.Of))
        {
            Assert.True(MaterialTable.TryFind(part.Key, out var material));
            if (material.Figures!.CarbonNitrogen is not { } range || part.Role == MaterialRole.Charcoal)
            {
                continue;
            }

            var (byCarbon, place) = draw(part);
            var ratio = range.Low + (place * (range.High - range.Low));
            var (c, n) = byCarbon ? (part.Nitrogen * ratio, part.Nitrogen) : (part.Carbon, part.Carbon / ratio);
            (carbon, nitrogen) = (carbon + (part.Dry * c), nitrogen + (part.Dry * n));
            mixed.Add(new MixPart(part.Key, part.Mass, new GivenFigures
            {
                CarbonPercent = c * 100,
                NitrogenPercent = n * 100,
            }));
        }

        return MixSolver.Solve(new MixProblem { Parts = mixed }) is MixResult.Solved(var mix)
            ? mix.CarbonNitrogen!.Value
            : carbon / nitrogen;
    }
}
