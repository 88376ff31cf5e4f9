using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class SproutTests
{
    [Theory]
    [InlineData("10", HeapStep.Ready)]
    [InlineData("8", HeapStep.Ready)]
    [InlineData("7", HeapStep.Curing)]
    [InlineData("0", HeapStep.Curing)]
    [InlineData("none grew", HeapStep.Curing)]
    [InlineData("8 grew well", HeapStep.Ready)]
    [InlineData("8 of 10", HeapStep.Ready)]
    [InlineData("8/10", HeapStep.Ready)]
    [InlineData("3 seeds", HeapStep.Curing)]
    [InlineData("half", HeapStep.Curing)]
    [InlineData("all of them", HeapStep.Ready)]
    [InlineData("no", HeapStep.Ready)]
    [InlineData("i did not sow", HeapStep.Ready)]
    public void SeedsCounted_DecideWhetherItIsRipe(string answer, HeapStep step)
    {
        var talker = Sown();

        talker.Hear(answer);

        Assert.Equal(step, talker.Heap.Step);
    }

    [Fact]
    public void NumberAboveTheSeedsSown_IsAskedAgain()
    {
        var talker = Sown().Hear("25");

        Assert.Equal(Stage.AskingSprouts, talker.Farmer!.Stage);
    }

    [Fact]
    public void NoAnswer_IsAskedTwiceAndNotHeldAgainstTheFarmer()
    {
        var talker = Sown();

        var asked = talker.Pass(Duration.FromDays(60));

        Assert.Single(asked);
        Assert.Equal(HeapStep.Ready, talker.Heap.Step);
        Assert.Null(talker.NextDue);
        Assert.Null(talker.Farmer!.Concern);
    }

    [Fact]
    public void LateAnswer_OnceAskedAgain_StillCounts()
    {
        var talker = Sown();
        talker.Pass(Duration.FromDays(60));

        talker.Hear("3", "3");

        Assert.Equal(HeapStep.Curing, talker.Heap.Step);
    }

    [Fact]
    public void HeapNeverAnsweredFor_IsNoSecondHeapForEver()
    {
        var talker = Sown();
        talker.Pass(Duration.FromDays(60));

        talker.Hear("new heap", Talker.ToABuiltHeap[2]);

        Assert.DoesNotContain("Heap 2:", talker.Said, StringComparison.Ordinal);
    }

    /// <summary>A farmer who said that the heap looks ready, a week and a day ago.</summary>
    private static Talker Sown()
    {
        var talker = Talker.WithHeap();
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap.To(HeapStep.Curing, new LocalDate(2026, 3, 2))] };
        talker.Wake().Hear("1");
        Assert.Equal(HeapStep.Sprouting, talker.Heap.Step);
        talker.Pass(Duration.FromDays(8));
        Assert.Equal(Stage.AskingSprouts, talker.Farmer!.Stage);
        return talker;
    }
}
