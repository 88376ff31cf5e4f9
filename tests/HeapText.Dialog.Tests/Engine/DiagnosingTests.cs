using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class DiagnosingTests
{
    private static readonly Duration Day = Duration.FromDays(1);

    [Fact]
    public void Fault_IsAskedAfterBeforeThePlannedTurning()
    {
        var talker = Talker.WithHeap(method: HeapMethods.All["slow-heap"]);
        talker.Pass(8 * Day);

        talker.Hear("warm, no smell, wet");

        Assert.Equal(new LocalDate(2026, 3, 13), talker.Heap.CheckOn);
        Assert.Contains(talker.Pass(4 * Day), said => said.Message.Text.Contains("feel the heat",
            StringComparison.Ordinal));
    }

    [Fact]
    public void HeapThatWorks_IsNotAskedAfterBeforeThePlannedTurning()
    {
        var talker = Talker.WithHeap(method: HeapMethods.All["slow-heap"]);
        talker.Pass(8 * Day);

        talker.Hear("warm, smells good, a drop or two");

        Assert.Null(talker.Heap.CheckOn);
        Assert.Empty(talker.Pass(10 * Day));
    }

    [Fact]
    public void FaultThatIsGone_IsNotAskedAfterAgain()
    {
        var talker = Talker.WithHeap(method: HeapMethods.All["slow-heap"]);
        talker.Pass(8 * Day);
        talker.Hear("warm, no smell, wet");
        talker.Pass(Day);

        talker.Hear("warm, smells good, a drop or two");

        Assert.Empty(talker.Pass(10 * Day));
    }

    [Fact]
    public void SlowHeap_IsFeltForTheFirstTimeLongBeforeItsTurning()
    {
        var said = Talker.WithHeap(method: HeapMethods.All["slow-heap"]).Pass(6 * Day);

        Assert.Equal("2026-03-07", said[0].At.InUtc().Date.ToString("uuuu-MM-dd", null));
        Assert.Contains("feel the heat", said[0].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Fault_ToldAgainTheNextDay_IsAnswered()
    {
        var talker = Talker.WithHeap();
        talker.Pass(Day);
        talker.Hear("flies");
        talker.Pass(Day);

        talker.Hear("flies");

        Assert.NotEmpty(talker.Says);
    }

    [Fact]
    public void Check_ClockSetBackSinceTheHeapWasBuilt_IsAnswered()
    {
        var talker = Talker.WithHeap();
        talker.Now -= Day;

        talker.Hear("hot");

        Assert.NotEmpty(talker.Says);
    }

    [Fact]
    public void Check_ClockSetBackSinceTheHeapWasTurned_IsAnswered()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        talker.Hear("turned");
        talker.Now -= Day;

        talker.Hear("warm, no smell, wet");

        Assert.NotEmpty(talker.Says);
    }

    [Fact]
    public void FaultAfterTheAdviceWasFollowed_GoesToAPerson()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        talker.Hear("warm, rotten, wet", "turned");
        talker.Pass(5 * Day);

        talker.Hear("rotten, wet");

        Assert.Contains(ConcernReason.Trouble, talker.Farmer!.Concern!.Others.Prepend(talker.Farmer.Concern.Reason));
        Assert.Contains("we have told", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void FaultAgain_AdviceNotFollowed_IsSaidAgainAndNotTold()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        talker.Hear("warm, rotten, wet");
        talker.Pass(Day);

        talker.Hear("rotten, wet");

        Assert.Null(talker.Farmer!.Concern);
        Assert.Contains("mix in dry", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void HotAndDry_CarriesTheFireCautionFirst()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("hot, no smell, dry");

        Assert.Contains("catch fire", talker.Says[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void PlannedTurningOfAWorkingHeap_IsAskedForOnce()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("warm, smells good, a drop or two");

        Assert.Equal(2, talker.Says.Count);
        Assert.Contains("Turn it now", talker.Says[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Turning_SetsTheOutlook()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("hot, smells good, a drop or two", "turned");

        var outlook = talker.Heap.Outlook!;
        Assert.InRange(outlook.ReadyFrom!.Value, new LocalDate(2026, 4, 6), new LocalDate(2026, 6, 1));
        Assert.InRange(Period.DaysBetween(outlook.ReadyFrom.Value, outlook.ReadyTo!.Value), 14, 60);
        Assert.InRange(outlook.YieldBuckets, 5, 20);
    }

    [Fact]
    public void Advice_WhenAPlannedTurningIsLate_IsNotToLetTheHeapRest()
    {
        var talker = Talker.WithHeap();
        foreach (var days in new[] { 3, 1, 9 })
        {
            talker.Pass(days * Day);
            talker.Hear("turned, hot, earthy, good");
        }
        talker.Pass(7 * Day);
        Assert.Equal((HeapStep.Turning, 3), (talker.Heap.Step, talker.Heap.TurnedOn.Count));
        Assert.Equal(new LocalDate(2026, 3, 22), talker.Heap.Due);

        talker.Hear("cold, earthy, good");

        Assert.Contains("Turn it now", talker.Said, StringComparison.Ordinal);
        Assert.DoesNotContain("let it rest", talker.Said, StringComparison.Ordinal);
    }
}
