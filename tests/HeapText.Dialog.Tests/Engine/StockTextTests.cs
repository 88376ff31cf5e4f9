using System.Text.Json;
using HeapText.Dialog.Engine;

namespace HeapText.Dialog.Tests.Engine;

public sealed class StockTextTests
{
    /// <summary>The stock texts of the reference examples, English and Swahili.</summary>
    public static TheoryData<string, string> Texts()
    {
        TheoryData<string, string> texts = [];
        var folder = Repository.Path("tests", "HeapText.Dialog.Tests", "Replies", "Corpus");
        foreach (var line in Directory.GetFiles(folder, "*-examples.jsonl").SelectMany(File.ReadLines))
        {
            var example = JsonDocument.Parse(line).RootElement;
            if (example.GetProperty("expect").GetProperty("intent").GetString() == "stock")
                texts.Add(example.GetProperty("lang").GetString()!, example.GetProperty("text").GetString()!);
        }
        return texts;
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void ReferenceStock_WithItsQuestionsAnswered_EndsInARecipeOrInWhatToBring(string language, string text)
    {
        var talker = new Talker().Hear("join 41", "yes", language == "sw" ? "kiswahili" : "english", text);
        for (var i = 0; i < 4 && talker.Farmer!.Stage is Stage.AskingMeasure or Stage.AskingAmount; i++)
            talker.Hear("2");

        Assert.Contains(talker.Farmer!.Stage, (Stage[])[Stage.Building, Stage.Gathering]);
        if (talker.Farmer.Stage == Stage.Gathering) Assert.NotEmpty(talker.Farmer.Draft!.Missing);
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void ReferenceStock_WhatToBringBrought_EndsInARecipe(string language, string text)
    {
        var talker = new Talker().Hear("join 41", "yes", language == "sw" ? "kiswahili" : "english", text);
        for (var i = 0; i < 8 && talker.Farmer!.Stage != Stage.Building; i++)
            talker.Hear(talker.Farmer.Stage == Stage.Gathering ? "1" : "2");

        Assert.Equal(Stage.Building, talker.Farmer!.Stage);
    }

    [Fact]
    public void Recipe_NamesAmountsInTheMeasuresTheFarmerUsed()
    {
        var talker = new Talker().Hear("join 41", "yes",
            "30 sacks dry leaves, 8 basins goat manure, 6 headloads green weeds, 40 kg maize bran");

        Assert.All(talker.Heap.Plan.PerRound, portion => Assert.Contains(portion.Measure,
            (string[])["sack", "basin", "headload", "kg"]));
    }
}
