using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class DiagnoseVerbTests
{
    // Ngeze 1998, ch. 6: very hot and dry, turn and water.
    [Fact]
    public void Diagnose_HotAndDry_IsWrittenWithEveryProperty()
    {
        var run = Run("""
            {"heat":"hot","smell":"earthy","moisture":"dry","pests":"none","ageDays":9,"daysSinceTurn":4,
             "method":"daily-then-weekly"}
            """);

        Assert.Equal(0, run.Exit);
        Assert.Empty(run.Error);
        Assert.Equal(
            ["findings", "actions", "urgent", "nextCheckDays", "turnNow", "needsPerson", "cautions"],
            run.Json.EnumerateObject().Select(property => property.Name));
        var finding = run.Json.GetProperty("findings")[0];
        Assert.Equal("dry-hot-core", finding.GetProperty("cause").GetString());
        Assert.Equal("high", finding.GetProperty("confidence").GetString());
        Assert.Equal(["turn-water"], Words(run, "actions"));
        Assert.Equal(["fire", "steam", "rod-burn", "dust"], Words(run, "cautions"));
        Assert.False(run.Json.GetProperty("urgent").GetBoolean());
        Assert.Equal(2, run.Json.GetProperty("nextCheckDays").GetInt32());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""
        {"heat":null,"smell":null,"moisture":null,"pests":null,"ageDays":null,"daysSinceTurn":null,"method":null}
        """)]
    public void Diagnose_NothingKnown_AsksForTheCheck(string input) =>
        Assert.Equal(["ask-check"], Words(Run(input), "actions"));

    [Fact]
    public void Diagnose_UrgentSign_SaysOnlyWhatIsUrgent()
    {
        var run = Run("""{"heat":"hot","moisture":"dry","ageDays":30,"signs":["smouldering"]}""");

        Assert.True(run.Json.GetProperty("urgent").GetBoolean());
        Assert.True(run.Json.GetProperty("needsPerson").GetBoolean());
        Assert.Equal(["do-not-open", "keep-away", "call-officer"], Words(run, "actions"));
    }

    [Fact]
    public void Diagnose_StepJustDone_IsNotAskedAgain()
    {
        var run = Run("""
            {"heat":"cold","moisture":"dry","pests":"ants-termites","ageDays":9,"lastAction":"turn-water",
             "lastActionDays":1}
            """);

        Assert.Equal(["look-deeper"], Words(run, "actions"));
    }

    // Howard, as told by Solomon: pits fill with water in heavy rain.
    [Fact]
    public void Diagnose_APit_IsDugOutWhenItDrips() => Assert.Equal(
        ["drain", "keep-rain-off"],
        Words(Run("""{"moisture":"dripping","ageDays":20,"method":"dry-season-pit"}"""), "actions"));

    [Theory]
    [InlineData("""{"heat":"tepid"}""", "heat: must be one of hot, warm, cool, cold")]
    [InlineData("""{"heat":"Hot"}""", "heat: must be one of hot, warm, cool, cold")]
    [InlineData("""{"smell":"bad"}""", "smell: must be one of earthy, ammonia, rotten, sour, none")]
    [InlineData("""{"moisture":""}""", "moisture: must be one of dripping, wet, good, dry")]
    [InlineData("""{"pests":"ants"}""", "pests: must be one of flies, rats, ants-termites, none")]
    [InlineData("""{"rod":"stone"}""", "rod: must be one of metal, wood, hand")]
    [InlineData(
        """{"method":"tower"}""",
        "method: must be one of hot-turned, daily-then-weekly, slow-heap, dry-season-pit, small-ring")]
    [InlineData(
        """{"signs":["smoke","wind"]}""",
        "signs[1]: must be one of badly-hurt, burn, sick-person, smouldering, smoke, poison")]
    [InlineData(
        """{"signs":[null]}""",
        "signs[0]: must be one of badly-hurt, burn, sick-person, smouldering, smoke, poison")]
    [InlineData("""{"ageDays":-1}""", "ageDays: must be from 0 to 3650")]
    [InlineData("""{"ageDays":3.5}""", "ageDays: has the wrong type")]
    [InlineData("""{"ageDays":"3"}""", "ageDays: has the wrong type")]
    [InlineData("""{"daysSinceTurn":9999}""", "daysSinceTurn: must be from 0 to 3650")]
    [InlineData("""{"ageDays":3,"daysSinceTurn":4}""", "daysSinceTurn: must be at most ageDays")]
    [InlineData("""{"lastAction":"turn"}""", "lastActionDays: must be given with lastAction")]
    [InlineData("""{"lastActionDays":1}""", "lastAction: must be given with lastActionDays")]
    [InlineData("""{"colour":"brown"}""", "colour: is no known property")]
    [InlineData("[]", "input: has the wrong type")]
    public void Diagnose_WhatCannotBe_IsRefusedInOneLine(string input, string error) => Run(input).AssertRefused(error);

    [Fact]
    public void Diagnose_UnknownLastAction_NamesThoseKnown()
    {
        var run = Run("""{"lastAction":"dance","lastActionDays":1}""");

        Assert.Equal(1, run.Exit);
        Assert.StartsWith("lastAction: must be one of keep-going, wait, ", run.Error, StringComparison.Ordinal);
    }

    private static IEnumerable<string?> Words(VerbRun run, string property) =>
        run.Json.GetProperty(property).EnumerateArray().Select(word => word.GetString());

    private static VerbRun Run(string input) => VerbRun.Of(DiagnoseVerb.Run, input);
}
