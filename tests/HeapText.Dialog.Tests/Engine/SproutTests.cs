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

        talker.Pass(Duration.FromDays(60));

        Assert.Equal(HeapStep.Sprouting, talker.Heap.Step);
        Assert.Null(talker.Farmer!.Concern);
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
