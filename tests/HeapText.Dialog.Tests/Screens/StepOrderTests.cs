using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Tests.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Screens;

/// <summary>Steps that come late, early or never. The same step twice does not reach the conversation: the service
/// answers it from what it kept.</summary>
public sealed class StepOrderTests
{
    private readonly Talker _talker = Talker.WithHeap();

    public StepOrderTests()
    {
        _talker.Pass(Duration.FromDays(3));
        _talker.Step("a", 1, "").Step("a", 3, "1");
    }

    [Fact]
    public void Step_Overtaken_ShowsWhereTheFarmerIsAndChangesNothing()
    {
        var (farmer, screen) = (_talker.Farmer!, _talker.Screen);

        _talker.Step("a", 2, "4");

        Assert.Equal(screen, _talker.Screen);
        Assert.Equal(farmer, _talker.Farmer);
        Assert.Empty(_talker.Says);
    }

    [Fact]
    public void Step_AfterAGap_AnswersTheScreenShownLast()
    {
        Assert.Equal(Heat.Hot, _talker.Heap.Check!.Heat);

        _talker.Step("a", 9, "2");

        Assert.Equal(Smell.Ammonia, _talker.Heap.Check!.Smell);
    }

    [Fact]
    public void Step_OfASessionNotMetBefore_AnswersNothing()
    {
        _talker.Step("b", 4, "2");

        Assert.Null(_talker.Heap.Check!.Smell);
        Assert.Contains("How does the heap smell?", _talker.Screen.Text, StringComparison.Ordinal);
        Assert.Equal(Smell.Ammonia, _talker.Step("b", 5, "2").Heap.Check!.Smell);
    }

    [Fact]
    public void Step_AfterTheSessionEnded_ShowsWhereTheFarmerIs()
    {
        _talker.Step("a", 4, "1").Step("a", 5, "3").Step("a", 6, "#").Step("a", 7, "1");
        Assert.False(_talker.Screen.Open);
        var turned = _talker.Heap.TurnedOn.Count;

        _talker.Step("a", 8, "3");

        Assert.StartsWith("1 what is next", _talker.Screen.Text, StringComparison.Ordinal);
        Assert.Equal(turned, _talker.Heap.TurnedOn.Count);
    }

    [Fact]
    public void Step_WithoutAnEntry_ShowsTheSameScreen()
    {
        var screen = _talker.Screen;

        Assert.Equal(screen, _talker.Step("a", 4, " ").Screen);
        Assert.Equal(Stage.AskingSmell, _talker.Farmer!.Stage);
    }
}
