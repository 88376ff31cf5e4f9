using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

public class RecipeSolverTests
{
    private static readonly StockItem[] Plenty =
    [
        new("dry-grass", 40, "wheelbarrow"),
        new("cow-dung", 30, "bucket"),
        new("green-weeds", 10, "wheelbarrow"),
        new("maize-stover", 10, "wheelbarrow"),
        new("topsoil", 6, "bucket"),
        new("rice-bran", 4, "bucket"),
    ];

    [Fact]
    public void Layers_OfARound_FollowTheBuildingOrder()
    {
        var roles = Heap(Plenty).Recipe.PerRound.Select(layer => layer.Role).ToList();

        Assert.Equal(roles.Order(), roles);
        Assert.Equal("maize-stover", Heap(Plenty).Recipe.PerRound[0].Material);
    }

    [Fact]
    public void Water_OfADryHeap_BringsItToFiftyFivePercent()
    {
        var heap = Heap(new("maize-stover", 30, "wheelbarrow"), new("goat-manure", 10, "bucket"));

        Assert.Equal(55, heap.Recipe.Moisture.Percent, 6);
    }

    [Fact]
    public void Water_OfADenseHeap_StopsAtItsBulkDensity()
    {
        var heavy = new GivenFigures { DensityKgPerM3 = 600, CarbonNitrogen = 25 };
        var heap = Heap(
            new("coffee-husk", 30, "wheelbarrow"),
            new("cow-dung-dry", 30, "wheelbarrow") { Given = heavy });

        var perLitre = heap.Recipe.Mass.Kilograms / heap.Recipe.Volume.Litres;

        Assert.InRange(perLitre, 0.6399, 0.6401);
        Assert.InRange(heap.Recipe.Moisture.Percent, 50, 55);
    }

    [Fact]
    public void Heaps_OfALargeStock_AreCounted()
    {
        var heap = Heap(new StockItem("coffee-husk", 5000, "kg"));

        Assert.Equal(2, heap.Recipe.Heaps);
        Assert.InRange(heap.Recipe.Volume.Litres, 11_900, 12_000);
    }

    [Fact]
    public void Earth_InAHeap_IsPartOfIt()
    {
        var heap = Heap([.. Plenty, new("termite-soil", 3, "bucket")]);

        Assert.Contains(heap.Recipe.PerRound, layer => layer.Material == "termite-soil");
    }

    [Fact]
    public void Material_WithItsFiguresGiven_IsCountedByThem()
    {
        var given = new GivenFigures
        {
            CarbonPercent = 42,
            NitrogenPercent = 1,
            MoisturePercent = 12,
            DensityKgPerM3 = 60,
        };

        StockItem stalks = new("cotton-stalk", 40, "wheelbarrow");
        StockItem dung = new("cow-dung", 10, "bucket");

        var own = Heap(stalks with { Given = given }, dung).Recipe;
        var usual = Heap(stalks, dung).Recipe;

        Assert.True(own.Mass.Kilograms / own.Volume.Litres < usual.Mass.Kilograms / usual.Volume.Litres);
    }

    [Fact]
    public void Material_ThatNeverGoesIn_IsCautionedAgainst()
    {
        var heap = Heap([.. Plenty, new("plastic", 1, "sack"), new("meat", 2, "kg")]);

        Assert.Equal(["refused:meat", "refused:plastic"], heap.Cautions.Take(2));
        Assert.DoesNotContain(heap.Recipe.PerRound, layer => layer.Material is "plastic" or "meat");
        Assert.Contains(heap.Unused, item => item.Material == "plastic");
    }

    [Fact]
    public void Lime_WithManure_StaysOut()
    {
        var heap = Heap([.. Plenty, Lime(6)]);

        Assert.Contains("lime-with-manure", heap.Notes);
        Assert.Contains(heap.Unused, item => item.Material == "lime");
    }

    [Fact]
    public void Lime_WithoutManure_GoesInWithCare()
    {
        var heap = Heap(new("bean-haulm", 40, "wheelbarrow"), new("green-weeds", 15, "wheelbarrow"), Lime(6));

        Assert.Contains(heap.Recipe.PerRound, layer => layer.Material == "lime");
        Assert.Contains("dust", heap.Cautions);
    }

    [Fact]
    public void Urine_InAHeap_FeedsItAndFillsNoSpace()
    {
        var heap = Heap(new("rice-straw", 40, "wheelbarrow"), new("urine", 3, "jerrycan"));

        var straw = heap.Recipe.Total.Single(item => item.Material == "rice-straw").Amount;
        Assert.Contains("liquid:urine", heap.Notes);
        Assert.Contains("manure-hygiene", heap.Cautions);
        Assert.Equal(straw * 65, heap.Recipe.Volume.Litres, 6);
    }

    // Its carbon cannot be eaten (invariant), so it must not lift the C/N of dung that lacks carbon.
    [Fact]
    public void Charcoal_AsTheOnlyCarbon_MakesNoHeap() =>
        Assert.IsType<RecipeResult.NoHeap>(Solve(new("goat-manure", 40, "bucket"), new("charcoal", 40, "bucket")));

    [Fact]
    public void Cautions_OfAshAndCharcoal_ComeInTime()
    {
        var heap = Heap([.. Plenty, new("wood-ash", 6, "bucket"), new("charcoal", 10, "bucket")]);

        Assert.Equal(["dust", "ash-cold", "manure-hygiene", "lifting", "wells", "snakes"], heap.Cautions);
    }

    [Fact]
    public void Cautions_OfFurtherHeaps_CoverWhatTheFirstDoesNotHold()
    {
        var solved = RecipeSolver.Solve(new RecipeRequest
        {
            Stock =
            [
                new("green-weeds", 120, "wheelbarrow"), new("cow-dung", 30, "bucket"),
                new("coffee-husk", 200, "bucket"), new("dry-leaves", 120, "wheelbarrow"),
            ],
            WithMore = true,
        });

        var heaps = Assert.IsType<RecipeResult.Solved>(solved);
        Assert.DoesNotContain(heaps.Recipe.PerRound, layer => layer.Material == "cow-dung");
        Assert.Contains(heaps.More, heap => heap.PerRound.Any(layer => layer.Material == "cow-dung"));
        Assert.Contains("manure-hygiene", heaps.Cautions);
    }

    [Fact]
    public void Cautions_OfAPit_NameIt()
    {
        var pit = HeapMethods.All["dry-season-pit"];

        var solved = RecipeSolver.Solve(new RecipeRequest { Stock = Plenty, Method = pit });

        Assert.Equal("pit", Assert.IsType<RecipeResult.Solved>(solved).Cautions[0]);
        Assert.DoesNotContain("pit", Heap(Plenty).Cautions);
    }

    [Theory]
    [InlineData("bone-meal")]
    [InlineData("lime")]
    public void Dust_OfAFinePowder_IsWarnedOf(string material) => Assert.True(Cautions.IsDusty(material));

    [Fact]
    public void Heap_OfWetStuff_IsANotedLastResort()
    {
        var heap = Heap(new("maize-stover", 10.5, "wheelbarrow"), new("green-weeds", 6, "wheelbarrow"));

        Assert.Contains("wet", heap.Notes);
        Assert.InRange(heap.Recipe.Moisture.Percent, 60, 65);
        Assert.Equal(0, heap.Recipe.Water.Litres);
    }

    [Fact]
    public void Stock_OfNothing_SaysWhatToBring()
    {
        var none = Assert.IsType<RecipeResult.NoHeap>(Solve());

        Assert.Equal([MaterialRole.Brown, MaterialRole.Manure], none.Missing.Select(missing => missing.Role));
        Assert.All(none.Missing, missing => Assert.Equal(Lack.TooLittle, missing.Why));
        Assert.All(none.Missing, missing => Assert.NotEmpty(missing.Substitutes));
        Assert.Empty(none.Cautions);
    }

    [Theory]
    [InlineData("rice-straw", 30, MaterialRole.Manure, Lack.TooMuchCarbon)]
    [InlineData("vegetable-waste", 10, MaterialRole.Brown, Lack.TooWet)]
    [InlineData("goat-manure", 10, MaterialRole.Brown, Lack.TooMuchNitrogen)]
    [InlineData("coffee-husk", 10, MaterialRole.Manure, Lack.TooLittle)]
    public void Missing_FromALopsidedStock_SaysWhy(string material, double amount, MaterialRole role, Lack why)
    {
        var none = Assert.IsType<RecipeResult.NoHeap>(Solve(new StockItem(material, amount, "wheelbarrow")));

        var missing = Assert.Single(none.Missing);
        Assert.Equal((role, why), (missing.Role, missing.Why));
    }

    [Fact]
    public void Missing_OfWhatIsOnHand_ComesInTheFarmersMeasure()
    {
        var result = Solve(new("rice-straw", 4, "sack"), new("goat-manure", 1, "basin"));

        var none = Assert.IsType<RecipeResult.NoHeap>(result);
        Assert.Contains(none.Missing, missing => missing is { Material: "rice-straw", Measure: "sack" });
    }

    [Fact]
    public void Space_TooSmallForAnyHeap_IsSaid()
    {
        var result = RecipeSolver.Solve(new RecipeRequest { Stock = Plenty, Space = new HeapSpace(WidthM: 1) });

        Assert.Contains("space-too-small", result.Notes);
        Assert.Empty(Assert.IsType<RecipeResult.NoHeap>(result).Missing);
    }

    [Fact]
    public void Measures_OfTheDistrict_CountInTheVolume()
    {
        StockItem[] stock = [new("bean-haulm", 30, "sack"), new("cow-dung", 10, "bucket")];
        var own = Measures.Default.With(new Dictionary<string, double> { ["sack"] = 80 });

        var result = RecipeSolver.Solve(new RecipeRequest { Stock = stock, Measures = own });

        Assert.True(Assert.IsType<RecipeResult.Solved>(result).Recipe.Volume < Heap(stock).Recipe.Volume);
    }

    [Theory]
    [InlineData("unheard-of", 1, "bucket", "stock[1].material")]
    [InlineData("cow-dung", -1, "bucket", "stock[1].amount")]
    [InlineData("cow-dung", double.NaN, "bucket", "stock[1].amount")]
    [InlineData("cow-dung", 1_000_001, "bucket", "stock[1].amount")]
    [InlineData("cow-dung", 1, "cup", "stock[1].measure")]
    public void Request_ThatCannotBe_NamesTheField(string material, double amount, string measure, string field)
    {
        var request = new RecipeRequest { Stock = [Plenty[0], new StockItem(material, amount, measure)] };

        Assert.Equal(field, request.Check()?.Field);
        Assert.Throws<ArgumentException>(() => RecipeSolver.Solve(request));
    }

    [Fact]
    public void Request_WithFiguresThatCannotBe_NamesTheField()
    {
        var starved = new GivenFigures { CarbonPercent = 0, NitrogenPercent = 0 };
        var request = new RecipeRequest { Stock = [new("dry-grass", 1, "sack") { Given = starved }] };

        Assert.Equal("stock[0].nitrogenPercent", request.Check()?.Field);
        var flat = new RecipeRequest { Stock = [], Space = new HeapSpace(HeightM: 0) };
        Assert.Equal("space.heightM", flat.Check()?.Field);
    }

    private static StockItem Lime(double buckets) => new("lime", buckets, "bucket");

    private static RecipeResult Solve(params StockItem[] stock) =>
        RecipeSolver.Solve(new RecipeRequest { Stock = stock });

    private static RecipeResult.Solved Heap(params StockItem[] stock) =>
        Assert.IsType<RecipeResult.Solved>(Solve(stock));
}
