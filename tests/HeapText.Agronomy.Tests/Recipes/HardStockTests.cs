using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>Stocks that farmers really have and that make no easy heap: what they are told.</summary>
public class HardStockTests
{
    [Fact]
    public void Stock_TooWet_AsksForDryStuffAndNamesWhatDoesAsWell()
    {
        var missing = Bring(
            MaterialRole.Brown, Lack.TooWet,
            new("vegetable-waste", 10, "wheelbarrow"), new("green-weeds", 20, "wheelbarrow"),
            new("cow-dung", 20, "bucket"));

        Assert.Contains("rice-straw", missing.Substitutes);
        Assert.InRange(missing.Amount, 5, 12);
    }

    [Fact]
    public void Stock_TooDry_IsWateredHalfAsMuchAgainAsItWeighs()
    {
        var heap = Heap(new("rice-straw", 30, "wheelbarrow"), new("cow-dung-dry", 30, "bucket"));

        Assert.Equal(55, heap.Recipe.Moisture.Percent, 6);
        Assert.InRange(heap.Recipe.Water.Litres / heap.Recipe.Mass.Kilograms, 0.35, 0.5);
        Assert.InRange(heap.Recipe.WaterPerRound.Litres, 10, 80);
    }

    [Fact]
    public void Stock_OfGreensOnly_AsksForDryStuff() => Assert.InRange(
        Bring(
            MaterialRole.Brown, Lack.TooWet,
            new("green-weeds", 30, "wheelbarrow"), new("lantana", 20, "wheelbarrow"),
            new("tithonia", 10, "wheelbarrow")).Amount,
        5, 12);

    [Fact]
    public void Stock_OfBrownsOnly_AsksForDung()
    {
        var missing = Bring(
            MaterialRole.Manure, Lack.TooMuchCarbon,
            new("rice-straw", 30, "wheelbarrow"), new("maize-stover", 20, "wheelbarrow"));

        Assert.Equal(("cow-dung", "bucket"), (missing.Material, missing.Measure));
        Assert.Contains("goat-manure", missing.Substitutes);
    }

    [Fact]
    public void Stock_WithoutManure_MakesAHeapOfGreenAndBrown()
    {
        var heap = Heap(new("rice-straw", 30, "wheelbarrow"), new("lantana", 20, "wheelbarrow"));

        Assert.DoesNotContain("manure-hygiene", heap.Cautions);
        Assert.InRange(heap.Recipe.Volume.Litres, 2000, 3250);
        Assert.Empty(heap.Missing);
    }

    [Fact]
    public void Stock_OfPoultryDroppingsOnly_AsksForPlentyOfDryStuff() =>
        Assert.InRange(
            Bring(MaterialRole.Brown, Lack.TooWet, new StockItem("poultry-manure", 20, "bucket")).Amount, 12, 25);

    [Fact]
    public void Stock_OfPoultryDroppingsAndStraw_UsesFewDroppingsAndSaysHowUnsureItIs()
    {
        var heap = Heap(new("poultry-manure", 20, "bucket"), new("rice-straw", 30, "wheelbarrow"));

        var droppings = heap.Recipe.Total.Single(item => item.Material == "poultry-manure");
        Assert.InRange(droppings.Amount * 20 / heap.Recipe.Volume.Litres, 0.01, 0.05);
        Assert.Contains("cn-uncertain-low", heap.Notes);
        Assert.Contains("manure-hygiene", heap.Cautions);
    }

    [Fact]
    public void Stock_OfBananaStemsAndWaterHyacinth_AsksForDryStuffAndManure()
    {
        var none = None(new("banana-stem", 20, "wheelbarrow"), new("water-hyacinth", 20, "wheelbarrow"));

        Assert.Equal([MaterialRole.Brown, MaterialRole.Manure], none.Missing.Select(missing => missing.Role));
        Assert.Equal(Lack.TooWet, none.Missing[0].Why);
    }

    [Fact]
    public void Stock_OfBananaStemsAndWaterHyacinthWithStrawAndDung_UsesOnlyALittleOfTheWetStuff()
    {
        var heap = Heap(
            new("banana-stem", 20, "wheelbarrow"), new("water-hyacinth", 20, "wheelbarrow"),
            new("rice-straw", 20, "wheelbarrow"), new("goat-manure", 8, "bucket"));

        var wet = heap.Recipe.Total.Where(item => item.Material is "banana-stem" or "water-hyacinth");
        Assert.InRange(wet.Sum(item => item.Amount) * 65 / heap.Recipe.Volume.Litres, 0, 0.3);
        Assert.InRange(heap.Recipe.Moisture.Percent, 50, 60);
    }

    [Fact]
    public void Stock_OfCoffeePulp_AsksForDryStuff() =>
        Bring(MaterialRole.Brown, Lack.TooWet, new StockItem("coffee-pulp", 20, "wheelbarrow"));

    [Fact]
    public void Stock_OfCoffeePulpAndStraw_NeedsNoWater()
    {
        var heap = Heap(new("coffee-pulp", 20, "wheelbarrow"), new("rice-straw", 20, "wheelbarrow"));

        Assert.InRange(heap.Recipe.Water.Litres, 0, 20);
        Assert.Contains(heap.Unused, item => item is { Material: "coffee-pulp", Amount: > 5 });
    }

    [Theory]
    [InlineData("rice-straw", MaterialRole.Manure, Lack.TooMuchCarbon)]
    [InlineData("cow-dung", MaterialRole.Brown, Lack.TooWet)]
    [InlineData("donkey-manure", MaterialRole.Brown, Lack.TooWet)]
    [InlineData("poultry-litter", MaterialRole.Brown, Lack.TooMuchNitrogen)]
    [InlineData("water-hyacinth", MaterialRole.Brown, Lack.TooWet)]
    [InlineData("sawdust", MaterialRole.Manure, Lack.TooMuchCarbon)]
    [InlineData("topsoil", MaterialRole.Brown, Lack.TooLittle)]
    [InlineData("charcoal", MaterialRole.Brown, Lack.TooLittle)]
    [InlineData("wood-ash", MaterialRole.Brown, Lack.TooLittle)]
    public void Stock_OfATonneOfOneThing_SaysWhatItLacks(string material, MaterialRole role, Lack why)
    {
        StockItem[] stock = [new(material, 1000, "kg")];
        var none = None(stock);

        Assert.Contains(none.Missing, missing => (missing.Role, missing.Why) == (role, why));
        Assert.All(none.Missing, missing => Assert.NotEmpty(missing.Substitutes));
        StockItem[] brought = [.. none.Missing.Select(one => new StockItem(one.Material, one.Amount, one.Measure))];
        Heap([.. stock, .. brought]);
    }

    [Theory]
    [InlineData("coffee-husk")]
    [InlineData("groundnut-haulm")]
    public void Stock_OfATonneOfWhatHasAllAHeapNeeds_MakesOneOfItAlone(string material) =>
        Assert.Single(Heap(new StockItem(material, 1000, "kg")).Recipe.PerRound);

    [Theory]
    [InlineData(1.0, null, null, "narrow")]
    [InlineData(null, null, 0.4, "low")]
    [InlineData(1.2, 1.2, 0.6, "small")]
    public void Space_TooTightForAHeap_IsSaidAndNothingIsAskedFor(double? w, double? l, double? h, string why)
    {
        var none = Assert.IsType<RecipeResult.NoHeap>(Solve(new HeapSpace(w, l, h), Ordinary));

        Assert.True(none.Notes.Contains("space-too-small") && none.Missing.Count == 0, why);
        Assert.Equal(3, none.Unused.Count);
    }

    [Theory]
    [InlineData(1.2, null, null)]
    [InlineData(null, null, 0.6)]
    [InlineData(1.3, 1.3, null)]
    public void Space_ThatIsTightButEnough_IsFilledAsItIs(double? w, double? l, double? h)
    {
        var heap = Assert.IsType<RecipeResult.Solved>(Solve(new HeapSpace(w, l, h), Ordinary));

        Assert.Empty(Limits.Broken(Ordinary, heap, new HeapSpace(w, l, h)));
    }

    [Fact]
    public void Measure_OfOneHousehold_OverridesTheUsualOne()
    {
        var own = Measures.Default.With(new Dictionary<string, double> { ["sack"] = 75 });
        StockItem[] stock = [new("rice-straw", 20, "sack"), new("goat-manure", 8, "bucket")];

        var heap = RecipeSolver.Solve(new RecipeRequest { Stock = stock, Measures = own });

        var straw = Assert.IsType<RecipeResult.Solved>(heap).Recipe.Total.Single(item => item.Measure == "sack");
        var dung = ((RecipeResult.Solved)heap).Recipe.Total.Single(item => item.Measure == "bucket");
        Assert.Equal(
            (straw.Amount * 75) + (dung.Amount * 20), ((RecipeResult.Solved)heap).Recipe.Volume.Litres, 6);
    }

    [Fact]
    public void Measure_NobodyKnows_IsAFaultThatNamesTheField()
    {
        var request = new RecipeRequest { Stock = [.. Ordinary, new StockItem("lantana", 2, "cup")] };

        Assert.Equal(new InputFault("stock[3].measure", "is no known measure"), request.Check());
    }

    // A smallholder's wet dung weighed and dried on the spot: drier than the table, so the heap takes more of it.
    [Fact]
    public void Figure_MeasuredOnTheSpot_ChangesWhatGoesIn()
    {
        var drier = new StockItem("cow-dung", 30, "bucket") { Given = new GivenFigures { MoisturePercent = 60 } };
        var straw = new StockItem("rice-straw", 20, "wheelbarrow");

        var usual = Heap(straw, drier with { Given = GivenFigures.None }).Recipe;
        var measured = Assert.IsType<RecipeResult.Solved>(Solve(HeapSpace.Open, [straw, drier])).Recipe;

        Assert.True(measured.Volume > usual.Volume);
    }

    private static StockItem[] Ordinary =>
        [new("rice-straw", 20, "wheelbarrow"), new("lantana", 8, "wheelbarrow"), new("goat-manure", 6, "bucket")];

    private static RecipeResult Solve(HeapSpace space, StockItem[] stock) =>
        RecipeSolver.Solve(new RecipeRequest { Stock = stock, Space = space });

    private static RecipeResult.Solved Heap(params StockItem[] stock)
    {
        var heap = Assert.IsType<RecipeResult.Solved>(Solve(HeapSpace.Open, stock));
        Assert.Empty(Limits.Broken(stock, heap, HeapSpace.Open));
        return heap;
    }

    private static RecipeResult.NoHeap None(params StockItem[] stock) =>
        Assert.IsType<RecipeResult.NoHeap>(Solve(HeapSpace.Open, stock));

    private static Missing Bring(MaterialRole role, Lack why, params StockItem[] stock)
    {
        var missing = Assert.Single(None(stock).Missing);
        Assert.Equal((role, why), (missing.Role, missing.Why));
        Assert.NotEmpty(missing.Substitutes);
        Heap([.. stock, new StockItem(missing.Material, missing.Amount, missing.Measure)]);
        return missing;
    }
}
