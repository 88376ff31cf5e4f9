using System.Text.Json;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public class RecipeVerbTests
{
    private static readonly string[] Properties =
    [
        "feasible", "rounds", "perRound", "total", "unused", "missing", "waterLitres", "waterPerRoundLitres",
        "volumeLitres", "massKg", "cn", "cnLow", "cnHigh", "moisturePercent", "dimensions", "heaps", "more", "left",
        "layers", "cautions", "notes",
    ];

    [Fact]
    public void Recipe_OfAnOrdinaryStock_IsWrittenWithEveryProperty()
    {
        var heap = Run("""
            {"stock":[
              {"material":"rice-straw","amount":20,"measure":"wheelbarrow"},
              {"material":"lantana","amount":8,"measure":"wheelbarrow"},
              {"material":"goat-manure","amount":6,"measure":"bucket"}],
             "method":"daily-then-weekly"}
            """).Json;

        Assert.Equal(Properties, heap.EnumerateObject().Select(property => property.Name));
        Assert.True(heap.GetProperty("feasible").GetBoolean());
        Assert.InRange(heap.GetProperty("rounds").GetInt32(), 3, 10);
        Assert.InRange(heap.GetProperty("cn").GetDouble(), 25, 40);
        Assert.InRange(heap.GetProperty("cnLow").GetDouble(), 10, heap.GetProperty("cn").GetDouble());
        Assert.InRange(heap.GetProperty("cnHigh").GetDouble(), heap.GetProperty("cn").GetDouble(), 80);
        Assert.InRange(heap.GetProperty("volumeLitres").GetDouble(), 1000, 12_000);
        Assert.Equal(
            heap.GetProperty("waterLitres").GetDouble(),
            heap.GetProperty("waterPerRoundLitres").GetDouble() * heap.GetProperty("rounds").GetInt32(),
            6);
        Assert.Equal("cover", heap.GetProperty("layers").EnumerateArray().Last().GetString());
    }

    [Fact]
    public void Recipe_OfAnEmptyStock_SaysWhatToBringWithEveryProperty()
    {
        var none = Run("""{"stock":[]}""").Json;

        Assert.Equal(Properties, none.EnumerateObject().Select(property => property.Name));
        Assert.False(none.GetProperty("feasible").GetBoolean());
        Assert.Equal(0, none.GetProperty("heaps").GetInt32());
        Assert.Equal(JsonValueKind.Null, none.GetProperty("cn").ValueKind);
        Assert.All(none.GetProperty("missing").EnumerateArray(), missing => Assert.Equal(
            ["material", "role", "amount", "measure", "why", "substitutes"],
            missing.EnumerateObject().Select(property => property.Name)));
        Assert.Equal("too-little", none.GetProperty("missing")[0].GetProperty("why").GetString());
    }

    [Fact]
    public void Recipe_InTheDistrictsMeasuresAndASmallSpace_ObeysBoth()
    {
        var heap = Run("""
            {"stock":[
              {"material":"bean-haulm","amount":60,"measure":"sack"},
              {"material":"cow-dung","amount":20,"measure":"bucket","moisturePercent":70,"densityKgPerM3":700}],
             "measures":{"sack":80},"space":{"widthM":1.5,"lengthM":2,"heightM":1.2}}
            """).Json;

        var dimensions = heap.GetProperty("dimensions");
        Assert.InRange(dimensions.GetProperty("widthM").GetDouble(), 1.2, 1.5);
        Assert.InRange(dimensions.GetProperty("lengthM").GetDouble(), 1.2, 2);
        Assert.InRange(dimensions.GetProperty("heightM").GetDouble(), 0.45, 1.2);
        Assert.InRange(heap.GetProperty("volumeLitres").GetDouble(), 1000, 3600);
    }

    [Fact]
    public void Recipe_OfALargeStock_PlansFurtherHeapsOfWhatIsLeft()
    {
        var heap = Run("""{"stock":[{"material":"coffee-husk","amount":5000,"measure":"kg"}]}""").Json;

        var more = heap.GetProperty("more")[0];
        Assert.Equal(
            ["rounds", "perRound", "total", "waterLitres", "waterPerRoundLitres", "volumeLitres", "massKg", "cn",
                "cnLow", "cnHigh", "moisturePercent", "dimensions", "heaps"],
            more.EnumerateObject().Select(property => property.Name));
        var heaps = heap.GetProperty("heaps").GetInt32();
        var used = (heaps * Amount(heap.GetProperty("total"))) + Amount(more.GetProperty("total"));
        Assert.Equal(2, heaps);
        Assert.Equal(5000, used + Amount(heap.GetProperty("left")), 6);
        Assert.Equal(5000, Amount(heap.GetProperty("total")) + Amount(heap.GetProperty("unused")), 6);
    }

    [Fact]
    public void Recipe_ByMethod_ObeysItsBounds()
    {
        var stock = """
            "stock":[{"material":"rice-straw","amount":60,"measure":"wheelbarrow"},
                     {"material":"goat-manure","amount":20,"measure":"bucket"}]
            """;

        var pit = Run($$"""{{{stock}},"method":"dry-season-pit"}""").Json;
        var ring = Run($$"""{{{stock}},"method":"small-ring"}""").Json;

        Assert.InRange(pit.GetProperty("rounds").GetInt32(), 3, 4);
        Assert.InRange(pit.GetProperty("dimensions").GetProperty("heightM").GetDouble(), 0.45, 0.7);
        Assert.InRange(ring.GetProperty("volumeLitres").GetDouble(), 500, 1726);
        Assert.Equal(
            ring.GetProperty("dimensions").GetProperty("widthM").GetDouble(),
            ring.GetProperty("dimensions").GetProperty("lengthM").GetDouble());
    }

    [Fact]
    public void Recipe_OfAVillage_SaysWhoGivesWhatToWhom()
    {
        var village = Run("""
            {"village":[
              {"name":"Neema","stock":[{"material":"rice-straw","amount":40,"measure":"wheelbarrow"}]},
              {"name":"Baraka","stock":[{"material":"goat-manure","amount":20,"measure":"bucket"}]},
              {"name":"Zawadi","stock":[]}]}
            """).Json.GetProperty("village");

        Assert.Equal(
            ["moves", "households", "heapsBefore", "heapsAfter", "carriedLitres", "lacking", "surplus", "proven"],
            village.EnumerateObject().Select(property => property.Name));
        Assert.Equal(0, village.GetProperty("heapsBefore").GetInt32());
        Assert.InRange(village.GetProperty("heapsAfter").GetInt32(), 2, 3);
        Assert.Equal(3, village.GetProperty("households").GetArrayLength());
        Assert.All(village.GetProperty("moves").EnumerateArray(), move => Assert.Equal(
            ["from", "to", "material", "amount", "measure"], move.EnumerateObject().Select(property => property.Name)));
        Assert.All(village.GetProperty("households").EnumerateArray(), house => Assert.Equal(
            house.GetProperty("after").GetBoolean(), house.GetProperty("heap").ValueKind == JsonValueKind.Object));
    }

    [Theory]
    [InlineData("""{"village":[],"stock":[]}""", "village: must not be given with stock")]
    [InlineData("""{"village":[null]}""", "village[0].name: must be given")]
    [InlineData("""{"village":[{"stock":[]}]}""", "village[0].name: must be given")]
    [InlineData("""{"village":[{"name":"A"}]}""", "village[0].stock: must be given; it may be empty")]
    [InlineData("""{"village":[{"name":"A","stock":[]},{"name":"A","stock":[]}]}""", "village[1].name: is given twice")]
    [InlineData(
        """{"village":[{"name":"A","stock":[{"material":"cow-dung","amount":1}]}]}""",
        "village[0].stock[0].measure: must be given")]
    [InlineData(
        """{"village":[{"name":"A","stock":[{"material":"cow-dung","amount":-1,"measure":"bucket"}]}]}""",
        "village[0].stock[0].amount: must be 0 or more")]
    [InlineData("""{"village":[],"method":"never"}""", "method: is no known method")]
    public void Village_ThatCannotBe_IsRefusedInOneLine(string input, string error) => Run(input).AssertRefused(error);

    [Theory]
    [InlineData("{}", "stock: must be given; it may be empty")]
    [InlineData("""{"stock":[null]}""", "stock[0].material: must be given")]
    [InlineData("""{"stock":[{"material":"cow-dung","measure":"bucket"}]}""", "stock[0].amount: must be given")]
    [InlineData(
        """{"stock":[{"material":"cow-dung","amount":-2,"measure":"bucket"}]}""", "stock[0].amount: must be 0 or more")]
    [InlineData(
        """{"stock":[{"material":"cow-dung","amount":1e9,"measure":"bucket"}]}""",
        "stock[0].amount: must be at most 1000000")]
    [InlineData(
        """{"stock":[{"material":"cow-dung","amount":2,"measure":"cup"}]}""", "stock[0].measure: is no known measure")]
    [InlineData(
        """{"stock":[{"material":"gravel","amount":2,"measure":"bucket"}]}""",
        "stock[0].material: is no known material")]
    [InlineData(
        """{"stock":[{"material":"cow-dung","amount":2,"measure":"bucket","moisturePercent":120}]}""",
        "stock[0].moisturePercent: must be from 0 to 100")]
    [InlineData(
        """{"stock":[{"material":"cow-dung","amount":2,"measure":"bucket","colour":1}]}""",
        "stock[0].colour: is no known property")]
    [InlineData("""{"stock":[],"method":"never"}""", "method: is no known method")]
    [InlineData("""{"stock":[],"measures":{"bucket":0}}""", "measures.bucket: must be from 0.01 to 10000 litres")]
    [InlineData("""{"stock":[],"measures":{"cup":1}}""", "measures.cup: is no measure that can be set")]
    [InlineData("""{"stock":[],"space":{"widthM":-1}}""", "space.widthM: must be above 0 and at most 1000 metres")]
    public void Recipe_ThatCannotBe_IsRefusedInOneLine(string input, string error) => Run(input).AssertRefused(error);

    private static double Amount(JsonElement items) =>
        items.EnumerateArray().Sum(item => item.GetProperty("amount").GetDouble());

    private static VerbRun Run(string input) => VerbRun.Of(RecipeVerb.Run, input);
}
