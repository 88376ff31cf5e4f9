using System.Text.Json;
using System.Text.Json.Nodes;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public class ForecastVerbTests
{
    private const string Stock = """
        {"stock":[
          {"material":"rice-straw","amount":20,"measure":"wheelbarrow"},
          {"material":"lantana","amount":8,"measure":"wheelbarrow"},
          {"material":"goat-manure","amount":6,"measure":"bucket"}]}
        """;

    [Fact]
    public void Forecast_OfARecipesOutput_StartsAsTheRecipeSays()
    {
        var recipe = VerbRun.Of(RecipeVerb.Run, Stock).Output;

        var forecast = Run(recipe).Json;

        Assert.Equal(
            [
                "days", "peakC", "peakDay", "daysAbove55", "readyDay", "yieldKg", "yieldLitres", "yieldBuckets",
                "waterAtTurnings", "notes",
            ],
            forecast.EnumerateObject().Select(property => property.Name));
        Assert.Equal(
            ["day", "coreC", "coreLowC", "coreHighC", "moisturePercent", "dryKg", "volumeLitres"],
            forecast.GetProperty("days")[0].EnumerateObject().Select(property => property.Name));
        Assert.Equal(91, forecast.GetProperty("days").GetArrayLength());
        var built = JsonDocument.Parse(recipe).RootElement;
        AssertNear(built, "moisturePercent", forecast.GetProperty("days")[0].GetProperty("moisturePercent"), 0.1);
        AssertNear(built, "volumeLitres", forecast.GetProperty("days")[0].GetProperty("volumeLitres"), 0.1);
    }

    [Fact]
    public void Forecast_OfARecipeWithFiguresOfItsOwn_KeepsItsMass()
    {
        var recipe = JsonNode.Parse(VerbRun.Of(RecipeVerb.Run, """
            {"stock":[
              {"material":"rice-straw","amount":20,"measure":"wheelbarrow","densityKgPerM3":70},
              {"material":"cow-dung","amount":12,"measure":"bucket","moisturePercent":65}],
             "measures":{"bucket":18}}
            """).Output)!;

        var first = Run(new JsonObject { ["recipe"] = recipe, ["ambientC"] = 22 }.ToJsonString()).Json
            .GetProperty("days")[0];

        var dry = recipe["massKg"]!.GetValue<double>() * (1 - (recipe["moisturePercent"]!.GetValue<double>() / 100));
        Assert.Equal(dry, first.GetProperty("dryKg").GetDouble(), 0.5);
    }

    [Fact]
    public void Forecast_OfParts_HasOneEntryADay()
    {
        var forecast = Run("""
            {"parts":[
              {"material":"maize-stover","massKg":60},
              {"material":"cow-dung","massKg":150,"moisturePercent":70},
              {"massKg":20,"carbonPercent":40,"nitrogenPercent":3,"moisturePercent":70,"densityKgPerM3":150}],
             "waterLitres":60,"ambientC":22,"turnDays":[4,8,15],"days":30,
             "checks":[{"day":3,"heat":"hot","moisture":"good","rod":"metal","smell":"earthy","pests":null}]}
            """).Json;

        Assert.Equal(Enumerable.Range(0, 31), Days(forecast).Select(day => day.GetProperty("day").GetInt32()));
        Assert.Equal(
            forecast.GetProperty("peakC").GetDouble(), Days(forecast).Max(day => day.GetProperty("coreC").GetDouble()));
        Assert.Equal(
            forecast.GetProperty("daysAbove55").GetInt32(),
            Days(forecast).Count(day => day.GetProperty("coreC").GetDouble() >= 55));
        Assert.Equal(22, Days(forecast)[0].GetProperty("coreC").GetDouble());
    }

    // The contract's parts know no density.
    [Fact]
    public void Forecast_OfPartsWithoutMaterialOrDensity_AssumesAUsualDensityAndSaysSo()
    {
        const string part = """{"massKg":600,"cn":30,"nitrogenPercent":1.5,"moisturePercent":60}""";

        var assumed = Run($$"""{"parts":[{{part}}]}""").Json;
        var measured = Run($$"""{"parts":[{{part}}],"volumeLitres":2000}""").Json;

        Assert.Contains("density-assumed", Notes(assumed));
        Assert.DoesNotContain("density-assumed", Notes(measured));
        Assert.Equal(2000, Days(assumed)[0].GetProperty("volumeLitres").GetDouble(), 1);
    }

    [Fact]
    public void Forecast_OfStrawInFrost_SaysThatItIsNotReadyWithinAYear()
    {
        var forecast = Run("""{"parts":[{"material":"rice-straw","massKg":100}],"ambientC":-5,"days":10}""").Json;

        Assert.Equal(JsonValueKind.Null, forecast.GetProperty("readyDay").GetProperty("likely").ValueKind);
        Assert.Equal(
            ["not-likely-to-reach-55", "not-ready-within-a-year"], Notes(forecast));
    }

    [Fact]
    public void Forecast_OfARecipeThatBuildsNothing_IsRefused() =>
        Run(VerbRun.Of(RecipeVerb.Run, """{"stock":[]}""").Output)
            .AssertRefused("feasible: must be true: this recipe builds no heap");

    [Theory]
    [InlineData("{}", "parts: must be given, or what recipe wrote")]
    [InlineData("""{"parts":[],"total":[]}""", "parts: must not be given together with a recipe, nor two recipes")]
    [InlineData("""{"parts":[]}""", "parts: must hold at least one part")]
    [InlineData("""{"parts":[{"material":"cow-dung"}]}""", "parts[0].massKg: must be given")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"massKg":2}""",
        "massKg: belongs to a recipe, not to parts")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"colour":2}""", "colour: is no known property")]
    [InlineData("""{"recipe":{"total":[],"colour":2}}""", "recipe.colour: is no known property")]
    [InlineData("""{"recipe":{"feasible":false}}""", "recipe.feasible: must be true: this recipe builds no heap")]
    [InlineData("""{"total":[]}""", "total: must list material, amount and measure of every part")]
    [InlineData("""{"total":[{"material":"cow-dung","amount":1,"measure":"cup"}]}""",
        "total[0].measure: is no known measure")]
    [InlineData("""{"total":[{"material":"plastic","amount":1,"measure":"bucket"}]}""",
        "total[0].densityKgPerM3: must be given: the table has none")]
    [InlineData("""{"total":[{"material":"plastic","amount":1,"measure":"kg"}]}""",
        "total[0].material: never goes into a heap")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"days":1.5}""", "days: has the wrong type")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"days":"3"}""", "days: has the wrong type")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"days":0}""", "days: must be from 1 to 365")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"turnDays":[-1]}""",
        "turnDays[0]: must be from 1 to 365")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"ambientC":80}""",
        "ambientC: must be from -10 to 45")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"checks":[{"heat":"hot"}]}""",
        "checks[0].day: must be given")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"checks":[{"day":1,"heat":"0"}]}""",
        "checks[0].heat: must be hot, warm, cool or cold")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1}],"checks":[null]}""",
        "checks[0].day: must be given")]
    public void Forecast_ThatCannotBe_IsRefusedInOneLine(string input, string error) =>
        Run(input).AssertRefused(error);

    private static List<JsonElement> Days(JsonElement forecast) =>
        [.. forecast.GetProperty("days").EnumerateArray()];

    private static IEnumerable<string?> Notes(JsonElement forecast) =>
        forecast.GetProperty("notes").EnumerateArray().Select(note => note.GetString());

    private static void AssertNear(JsonElement built, string name, JsonElement told, double tolerance) =>
        Assert.Equal(built.GetProperty(name).GetDouble(), told.GetDouble(), tolerance);

    private static VerbRun Run(string input) => VerbRun.Of(ForecastVerb.Run, input);
}
