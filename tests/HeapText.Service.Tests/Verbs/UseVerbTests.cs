using System.Text.Json;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public class UseVerbTests
{
    private static readonly string[] Properties =
    [
        "rateKgPerM2", "kgPerPlant", "kgNeeded", "kgNeededLow", "kgNeededHigh", "everyYears", "coversM2",
        "coversPlants", "nitrogenKgTotal", "nitrogenKgFirstYear", "fertiliserEquivalent", "value", "valueLater",
        "cautions",
    ];

    // Derived: 1000 kg at 40 %, 1.2 % N dry holds 7.2 kg N; 15 % of it (Eghball and Power 1999, from memory) is 2.35 kg
    // of urea.
    [Fact]
    public void Use_OfCompostThatIsThere_IsWrittenWithEveryProperty()
    {
        var run = Run("""
            {"crop":"maize","areaM2":1000,"compostKg":1000,"moisturePercent":40,"nitrogenPercent":1.2,
             "prices":{"urea":92}}
            """);

        Assert.Equal(0, run.Exit);
        Assert.Empty(run.Error);
        Assert.Equal(Properties, run.Json.EnumerateObject().Select(property => property.Name));
        Assert.Equal(620, Number(run, "kgNeeded"), 6);
        Assert.Equal(7.2, Number(run, "nitrogenKgTotal"), 6);
        Assert.Equal(1.08, Number(run, "nitrogenKgFirstYear"), 6);
        Assert.Equal(216, Number(run, "value"), 6);
        var urea = run.Json.GetProperty("fertiliserEquivalent")[0];
        Assert.Equal("urea", urea.GetProperty("name").GetString());
        Assert.Equal(2.35, urea.GetProperty("kg").GetDouble(), 2);
    }

    // Coffee planting guide (paperzz.com/doc/6844693): 1 debe, 20 L, a hole; a debe of compost weighs 10-13 kg.
    [Fact]
    public void Use_ByPlants_SaysTheKilogramsOfEach()
    {
        var run = Run("""{"crop":"coffee","plants":10}""");

        Assert.InRange(Number(run, "kgPerPlant"), 10, 13);
        Assert.InRange(Number(run, "kgNeeded"), 100, 130);
        Assert.Equal(10, Number(run, "coversPlants"), 6);
        Assert.Equal(JsonValueKind.Null, run.Json.GetProperty("value").ValueKind);
    }

    [Theory]
    [InlineData("raw", "unknown", "raw-interval-120")]
    [InlineData("unfinished", "likely", "raw-interval-120")]
    [InlineData("ready", "partly", "raw-interval-120")]
    [InlineData("ready", "unknown", "interval-120-unless-hot")]
    [InlineData("ready", "likely", "apply-month-before-sowing")]
    public void Use_OfCompostInAState_GivesItsCautions(string state, string hygiene, string first)
    {
        var run = Run($$"""{"crop":"salad","areaM2":4,"compostState":"{{state}}","hygiene":"{{hygiene}}"}""");

        Assert.Equal(first, run.Json.GetProperty("cautions")[0].GetString());
    }

    [Theory]
    [InlineData("{}", "crop: must be given")]
    [InlineData("""{"crop":"rice","areaM2":1}""", "crop: is no known crop: use one of vegetables, salad, maize, beans, "
        + "banana, coffee, coffee-tree, fruit-tree, nursery")]
    [InlineData("""{"crop":"maize"}""", "areaM2: must be given, or plants")]
    [InlineData("""{"crop":"maize","areaM2":1,"plants":1}""", "plants: must not be given beside areaM2")]
    [InlineData("""{"crop":"maize","areaM2":0}""", "areaM2: must be more than 0")]
    [InlineData("""{"crop":"maize","areaM2":-5}""", "areaM2: must be 0 or more")]
    [InlineData("""{"crop":"maize","plants":2.5}""", "plants: must be a whole number")]
    [InlineData("""{"crop":"maize","areaM2":1,"compostKg":2e6}""", "compostKg: must be at most 1000000")]
    [InlineData("""{"crop":"maize","areaM2":1,"moisturePercent":120}""", "moisturePercent: must be from 0 to 100")]
    [InlineData("""{"crop":"maize","areaM2":1,"nitrogenPercent":9}""",
        "nitrogenPercent: must be from 0 to 3, of dry matter: compost does not hold more")]
    [InlineData("""{"crop":"maize","areaM2":1,"prices":{"guano":1}}""",
        "prices.guano: is no known fertiliser: use one of urea, dap, npk-17-17-17, can-27")]
    [InlineData("""{"crop":"maize","areaM2":1,"prices":{"urea":0}}""",
        "prices.urea: must be more than 0 and at most 1000000, for one kilogram")]
    [InlineData("""{"crop":"maize","areaM2":1,"prices":{"urea":"120"}}""", "prices.urea: has the wrong type")]
    [InlineData("""{"crop":"maize","areaM2":1,"compostState":"old"}""",
        "compostState: must be one of ready, unfinished, raw")]
    [InlineData("""{"crop":"maize","areaM2":1,"hygiene":"certified"}""",
        "hygiene: must be one of unknown, unlikely, partly, likely")]
    [InlineData("""{"crop":"maize","areaM2":1,"field":2}""", "field: is no known property")]
    public void Use_ThatCannotBe_IsRefusedInOneLine(string input, string error) => Run(input).AssertRefused(error);

    private static double Number(VerbRun run, string property) => run.Json.GetProperty(property).GetDouble();

    private static VerbRun Run(string input) => VerbRun.Of(UseVerb.Run, input);
}
