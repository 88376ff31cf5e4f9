using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class SideTalkTests
{
    private const string Stock = "20 wheelbarrows maize stalks, 15 wheelbarrows green weeds, 12 buckets cow dung";
    private const string Little = "8 wheelbarrows dry grass, 3 wheelbarrows green weeds, 3 buckets cow dung";

    private static readonly Duration Day = Duration.FromDays(1);

    [Fact]
    public void StockTextedMeanwhile_IsAddedToWhatWasNamedBefore()
    {
        var talker = new Talker().Hear("join 41", "yes", Little, "method", "3 buckets goat manure");

        Assert.Equal(["dry-grass", "green-weeds", "cow-dung", "goat-manure"],
            talker.Farmer!.Draft!.Items.Select(item => item.Material));
    }

    [Fact]
    public void Method_WhileStockIsLacking_WorksTheStockOutByTheNewMethod()
    {
        var big = HeapMethods.Usual with
        {
            Key = "big",
            Bounds = HeapMethods.Usual.Bounds with { LeastLitres = 5_000 },
        };
        var talker = new Talker(method: big).Hear("join 41", "yes", Stock);
        Assert.Equal(Stage.Gathering, talker.Farmer!.Stage);

        talker.Hear("method", "1", "2", "3");

        Assert.Equal((Stage.Building, "dry-season-pit"), (talker.Farmer!.Stage, talker.Heap.Method));
    }

    [Fact]
    public void Method_WhileStockOfANewHeapIsAskedFor_GoesBackToThat()
    {
        var talker = new Talker().Hear("join 41", "yes", Stock, "new heap", "method", "1", "2", "3");

        Assert.Equal((Stage.AskingStock, "daily-then-weekly"), (talker.Farmer!.Stage, talker.Heap.Method));
    }

    [Fact]
    public void Method_InTheCheckOfAnotherHeap_GoesBackToTheCheck()
    {
        var talker = Talker.WithHeap().Hear("new heap", Stock);
        talker.Pass(3 * Day);
        talker.Farmer = talker.Farmer! with { Stage = Stage.AskingSmell, TalkOf = 1 };

        talker.Hear("method", "1", "2", "3");

        Assert.Equal("dry-season-pit", talker.Heap.Method);
        Assert.Equal((Stage.AskingSmell, 1), (talker.Farmer!.Stage, talker.Farmer.TalkOf));
        Assert.Contains("Heap 1: How does the heap smell?", talker.Says[^1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void HeapBuilt_WhileItWasPlannedAnew_IsLackingNothing()
    {
        var talker = new Talker().Hear("join 41", "yes", Little, "2", "method", "1", "1", "1");
        Assert.Equal(Stage.Gathering, talker.Farmer!.Stage);

        talker.Hear("built", "1", "1");

        Assert.Equal(Stage.Tending, talker.Farmer!.Stage);
        Assert.Null(talker.Farmer.Draft);
    }

    [Theory]
    [InlineData("hour", "3")]
    [InlineData("rod", "2")]
    public void HourOrRod_InACheck_GoesBackToTheCheck(string wish, string answer)
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        talker.Hear("1", wish, answer);

        Assert.Equal(Stage.AskingSmell, talker.Farmer!.Stage);
        Assert.Contains("How does the heap smell?", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void HourAskedTwice_IsAnsweredOnce()
    {
        var talker = Talker.WithHeap().Hear("hour", "hour", "3");

        Assert.Equal((Stage.Tending, 8), (talker.Farmer!.Stage, talker.Farmer.Hour));
    }

    [Fact]
    public void CheckTextedMeanwhile_AnswersTheOpenCheck()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        talker.Hear("1", "crop", "maize", "smells like urine");

        Assert.Equal(Stage.AskingMoisture, talker.Farmer!.Stage);
        Assert.Null(talker.Farmer.Side);
    }
}
