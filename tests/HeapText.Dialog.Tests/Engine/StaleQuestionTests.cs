using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class StaleQuestionTests
{
    private static readonly string Lead =
        Repository.Dialogs.Book.File("en").Messages[Catalogue.AskedLongAgo.Key].ToString();

    private static readonly Stage[] AskNothing =
        [Stage.Stranger, Stage.Tending, Stage.Building, Stage.Gathering];

    /// <summary>Every stage that asks, the answers to it that mean nothing alone.</summary>
    public static TheoryData<Stage, string> BareAnswers()
    {
        TheoryData<Stage, string> answers = [];
        foreach (var stage in Enum.GetValues<Stage>().Except(AskNothing))
            foreach (var answer in (string[])["2", "two", "yes", "no"]) answers.Add(stage, answer);
        return answers;
    }

    [Theory]
    [MemberData(nameof(BareAnswers))]
    public void BareAnswer_ADayAfterTheQuestion_HasItAskedAgain(Stage stage, string answer)
    {
        var talker = Asked(stage);
        var before = talker.Farmer!;
        talker.Now += Duration.FromDays(1);

        talker.Hear(answer);

        Assert.StartsWith(Lead, talker.Said);
        Assert.Equal(stage, talker.Farmer!.Stage);
        Assert.Equal(talker.Now, talker.Farmer.AskedAt);
        Assert.Equal(before.Heaps, talker.Farmer.Heaps);
        Assert.Equal((before.Hour, before.Rod), (talker.Farmer.Hour, talker.Farmer.Rod));
        Assert.Equal(before.Side, talker.Farmer.Side);
        Assert.Equal(before.Draft?.Items, talker.Farmer.Draft?.Items);
    }

    [Theory]
    [MemberData(nameof(BareAnswers))]
    public void BareAnswer_AfterItWasAskedAgain_Counts(Stage stage, string answer)
    {
        var talker = Asked(stage);
        talker.Now += Duration.FromDays(3);

        talker.Hear(answer, answer);

        Assert.DoesNotContain(Lead, talker.Said, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(BareAnswers))]
    public void BareAnswer_WithinTheDay_Counts(Stage stage, string answer)
    {
        var talker = Asked(stage);
        talker.Now += Duration.FromHours(24) - Duration.FromMinutes(1);

        talker.Hear(answer);

        Assert.DoesNotContain(Lead, talker.Said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Stage.AskingHeat, "hot")]
    [InlineData(Stage.AskingTurned, "turned")]
    [InlineData(Stage.AwaitingTurn, "turned")]
    [InlineData(Stage.AskingMoisture, "dry")]
    [InlineData(Stage.AskingRod, "metal")]
    [InlineData(Stage.AskingCrop, "maize")]
    [InlineData(Stage.AskingBuilt, "built")]
    [InlineData(Stage.AskingMeasure, "sacks")]
    [InlineData(Stage.AskingStock, "20 sacks dry grass")]
    public void AnswerInWords_DaysAfterTheQuestion_Counts(Stage stage, string answer)
    {
        var talker = Asked(stage);
        talker.Now += Duration.FromDays(2);

        talker.Hear(answer);

        Assert.DoesNotContain(Lead, talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void BareAnswer_AfterAReminderThatAskedSince_Counts()
    {
        var talker = Talker.WithHeap();
        talker.Pass(talker.NextDue!.Value - talker.Now);
        Assert.Equal(Stage.AskingHeat, talker.Farmer!.Stage);
        talker.Pass(Duration.FromDays(1));

        talker.Hear("1");

        Assert.NotEmpty(talker.Heap.TurnedOn);
    }

    [Fact]
    public void Brought_DaysAfterItWasAskedFor_NeedsNoSecondQuestion()
    {
        var talker = new Talker().Hear("join 41", "yes", "6 wheelbarrows maize stalks");
        Assert.Equal(Stage.Gathering, talker.Farmer!.Stage);
        talker.Now += Duration.FromDays(2);

        talker.Hear("1");

        Assert.Equal(Stage.Building, talker.Farmer.Stage);
    }

    /// <summary>A farmer at this question, asked just now.</summary>
    private static Talker Asked(Stage stage)
    {
        if (stage == Stage.AskingConsent) return new Talker().Hear("join 41");
        var talker = Talker.WithHeap();
        var isSide = stage is Stage.AskingCrop or Stage.AskingPlants or Stage.AskingLength or Stage.AskingWidth
            or Stage.AskingRain or Stage.AskingWater or Stage.AskingLabour;
        talker.Farmer = talker.Farmer! with
        {
            Stage = stage,
            TalkOf = 1,
            AskedAt = talker.Now,
            Draft = Stocktaking.IsUnderWay(stage) ? DraftAt(stage) : null,
            Side = isSide ? new SideTalk { Before = Stage.Tending, Crop = "maize", Length = 20 } : null,
            Report = stage == Stage.AskingHeap ? new HeapReport { Heaps = [1], Heat = Heat.Hot } : null,
        };
        return talker;
    }

    private static StockDraft DraftAt(Stage stage) => new()
    {
        Unsure = stage == Stage.AskingWhich
            ? [new UnsureItem("grass", ["dry-grass", "fresh-grass"], 3, "sack", false)]
            : [],
        MenuStep = stage == Stage.PickingMaterial ? 0 : null,
        Items = stage switch
        {
            Stage.AskingAmount => [new DraftItem("cow-dung", null, "bucket")],
            Stage.AskingMeasure => [new DraftItem("cow-dung", 3, null)],
            _ => [],
        },
    };
}
