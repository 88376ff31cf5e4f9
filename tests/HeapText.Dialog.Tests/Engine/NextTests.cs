using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

public sealed class NextTests
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    [Theory]
    [InlineData(HeapStep.Settling, Stage.AskingReheat)]
    [InlineData(HeapStep.Curing, Stage.AskingReady)]
    [InlineData(HeapStep.Sprouting, Stage.AskingSprouts)]
    public void QuestionThatIsDue_IsAskedAtOnceAndNotOnADayGoneBy(HeapStep step, Stage stage)
    {
        var talker = At(step, Today.PlusDays(-3)).Hear("next");

        Assert.Equal(stage, talker.Farmer!.Stage);
        Assert.Single(talker.Says);
        Assert.DoesNotContain("February", talker.Said, StringComparison.Ordinal);
        Assert.Empty(talker.Pass(Duration.FromHours(20)));
    }

    [Fact]
    public void HeapTakenUpAgain_IsAskedAfterOnceThatDay()
    {
        var talker = At(HeapStep.GivenUp, null);
        talker.Farmer = talker.Farmer! with
        {
            Heaps =
            [
                talker.Heap with { TurnedOn = [Today, Today, Today, Today], CheckOn = Today.PlusDays(-9) },
            ],
        };

        talker.Hear("next");

        Assert.Equal(Stage.AskingReheat, talker.Farmer!.Stage);
        Assert.Empty(talker.Pass(Duration.FromHours(20)));
    }

    [Fact]
    public void RestUnderWay_IsNotSaidToEndBeforeItsDay()
    {
        var talker = At(HeapStep.Curing, new LocalDate(2026, 5, 20));
        var outlook = new HeapOutlook { ReadyFrom = Today, ReadyTo = new LocalDate(2026, 6, 10) };
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap with { Outlook = outlook }] };

        talker.Hear("is it ready");

        Assert.Contains("between Wednesday 20 May and Wednesday 10 June", talker.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void CheckHeldUpUntilTheTurning_GivesWayToIt()
    {
        var talker = At(HeapStep.Turning, Today);
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap with { CheckOn = Today.PlusDays(-2) }] };

        talker.Wake();

        Assert.Contains("Turn your heap today", talker.Said, StringComparison.Ordinal);
        Assert.Empty(talker.Pass(Duration.FromHours(20)));
    }

    [Fact]
    public void MethodGivenUpByTheOffice_IsFollowedByTheUsualOne()
    {
        var talker = At(HeapStep.Turning, Today);
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap with { Method = "our-own" }], Method = "our-own" };

        talker.Hear("turned");

        Assert.Contains($"of {HeapMethods.Usual.Turns} comes on", talker.Said, StringComparison.Ordinal);
        talker.Hear("new heap", Talker.ToABuiltHeap[2]);
        Assert.Equal(HeapMethods.UsualKey, talker.Heap.Method);
    }

    [Fact]
    public void HotAndDryAfterTheLastTurning_CarriesTheFireCaution()
    {
        var talker = At(HeapStep.Settling, Today).Hear("next", "hot and dry");

        Assert.Contains("catch fire", talker.Says[0].Text, StringComparison.Ordinal);
        Assert.Equal(HeapStep.ExtraTurning, talker.Heap.Step);
    }

    private static Talker At(HeapStep step, LocalDate? due)
    {
        var talker = Talker.WithHeap();
        talker.Farmer = talker.Farmer! with { Heaps = [talker.Heap.To(step, due)] };
        return talker;
    }
}
