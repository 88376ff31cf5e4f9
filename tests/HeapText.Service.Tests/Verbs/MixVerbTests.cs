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
