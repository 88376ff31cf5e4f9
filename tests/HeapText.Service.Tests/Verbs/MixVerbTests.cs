using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public class MixVerbTests
{
    // Cornell Waste Management Institute, moisture of a mix: 6.8 kg of leaves brings 10 kg of grass to 60 %.
    [Fact]
    public void Mix_OfAPublishedExample_IsWrittenWithEveryProperty()
    {
        var run = Run("""
            {"parts":[
              {"massKg":10,"moisturePercent":77,"carbonPercent":45,"nitrogenPercent":2.4},
              {"massKg":6.8,"moisturePercent":35,"carbonPercent":50,"nitrogenPercent":0.75}]}
            """);

        Assert.Equal(0, run.Exit);
        Assert.Empty(run.Error);
        Assert.Equal(60, run.Json.GetProperty("moisturePercent").GetDouble(), 2);
        Assert.Equal(0, run.Json.GetProperty("waterToAddLitres").GetDouble());
        Assert.Equal(
            ["massKg", "dryKg", "carbonKg", "nitrogenKg", "cn", "moisturePercent", "waterToAddLitres"],
            run.Json.EnumerateObject().Select(property => property.Name));
    }

    // Mass balance: 100 kg at 10 % takes 125 L to reach 60 %.
    [Fact]
    public void Mix_WithATarget_SaysTheWaterToAdd()
    {
        var run = Run("""
            {"parts":[{"material":"wheat-straw","massKg":100}],"targetMoisturePercent":60}
            """);

        Assert.Equal(125, run.Json.GetProperty("waterToAddLitres").GetDouble(), 6);
        Assert.Equal(127, run.Json.GetProperty("cn").GetDouble(), 6);
    }

    // Moisture and water need no carbon or nitrogen: Cornell's 6.8 kg of leaves again, and 33.3 L by mass balance.
    [Theory]
    [InlineData("""{"massKg":10,"moisturePercent":77},{"massKg":6.8,"moisturePercent":35}""", 60, 0)]
    [InlineData("""{"massKg":100,"moisturePercent":40}""", 40, 33.333333333)]
    [InlineData("""{"massKg":50,"moisturePercent":40},{"material":"wood-ash","massKg":0}""", 40, 16.666666667)]
    public void Mix_OfMassAndMoistureAlone_LeavesCarbonAndNitrogenUnknown(string parts, double moisture, double water)
    {
        var run = Run($$"""{"parts":[{{parts}}]}""");

        Assert.Equal(moisture, run.Json.GetProperty("moisturePercent").GetDouble(), 6);
        Assert.Equal(water, run.Json.GetProperty("waterToAddLitres").GetDouble(), 6);
        Assert.All(["carbonKg", "nitrogenKg", "cn"], name =>
            Assert.Equal(System.Text.Json.JsonValueKind.Null, run.Json.GetProperty(name).ValueKind));
    }

    [Fact]
    public void Mix_WithoutNitrogen_HasNoRatio()
    {
        var run = Run("""{"parts":[{"material":"wood-ash","massKg":3}]}""");

        Assert.Equal(System.Text.Json.JsonValueKind.Null, run.Json.GetProperty("cn").ValueKind);
    }

    [Theory]
    [InlineData("", "input: is malformed JSON at line 1, byte 1")]
    [InlineData("null", "input: must be a JSON object")]
    [InlineData("[]", "input: has the wrong type")]
    [InlineData("""{"parts":[}""", "parts[0]: is malformed JSON at line 1, byte 11")]
    [InlineData("{}", "parts: must be given")]
    [InlineData("""{"parts":[]}""", "parts: must hold at least one part")]
    [InlineData("""{"parts":[],"water":1}""", "water: is no known property")]
    [InlineData("""{"parts":[{"massKg":1,"MassKg":1}]}""", "parts[0].MassKg: is no known property")]
    [InlineData("""{"parts":[{"massKg":1,"massKg":1}]}""", "parts[0].massKg: is given twice")]
    [InlineData("""{"parts":[{"massKg":"NaN"}]}""", "parts[0].massKg: has the wrong type")]
    [InlineData("""{"parts":[{"massKg":1}]}""", "parts[0].moisturePercent: must be given: the table has none")]
    [InlineData("""{"parts":[{"material":"cow-dung"}]}""", "parts[0].massKg: must be given")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":-1}]}""", "parts[0].massKg: must be 0 or more")]
    [InlineData("""{"parts":[{"material":"cow-dung","massKg":1e400}]}""", "parts[0].massKg: must be 0 or more")]
    [InlineData("""{"parts":[{"material":"gravel","massKg":1}]}""", "parts[0].material: is no known material")]
    [InlineData(
        """{"parts":[{"massKg":1,"carbonPercent":40,"nitrogenPercent":2,"cn":30,"moisturePercent":50}]}""",
        "parts[0].cn: disagrees with carbonPercent / nitrogenPercent")]
    public void Mix_ThatCannotBe_IsRefusedInOneLine(string input, string error) => Run(input).AssertRefused(error);

    private static VerbRun Run(string input) => VerbRun.Of(MixVerb.Run, input);
}
