using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class HeapPhaseTests
{
    /// <summary>Cornell: 40-50 degrees C in 2-3 days, 60-70 in 3-5; the longest hot time of four measured heaps was 25
    /// days.</summary>
    [Theory]
    [InlineData("daily-then-weekly", 0, null, HeapPhase.Fresh)]
    [InlineData("daily-then-weekly", 2, null, HeapPhase.Fresh)]
    [InlineData("daily-then-weekly", 3, null, HeapPhase.Heating)]
    [InlineData("daily-then-weekly", 5, 1, HeapPhase.Heating)]
    [InlineData("daily-then-weekly", 6, 1, HeapPhase.Hot)]
    [InlineData("daily-then-weekly", 12, 0, HeapPhase.Hot)]
    [InlineData("daily-then-weekly", 13, 1, HeapPhase.Cooling)]
    [InlineData("daily-then-weekly", 18, null, HeapPhase.Cooling)]
    [InlineData("daily-then-weekly", 19, 7, HeapPhase.Curing)]
    [InlineData("daily-then-weekly", 40, 2, HeapPhase.Cooling)] // turned once more after it warmed again
    [InlineData("daily-then-weekly", 20, 15, HeapPhase.Hot)] // the last turning was missed
    [InlineData("daily-then-weekly", 40, 35, HeapPhase.Cooling)]
    [InlineData("slow-heap", 20, null, HeapPhase.Hot)]
    [InlineData("slow-heap", 28, null, HeapPhase.Cooling)]
    [InlineData("slow-heap", 33, 3, HeapPhase.Hot)]
    [InlineData("slow-heap", 74, 14, HeapPhase.Curing)]
    [InlineData("dry-season-pit", 200, 999, HeapPhase.Cooling)] // never turned
    public void Of_ADay_IsThePhaseOfTheCalendar(string method, int age, int? since, HeapPhase phase) =>
        Assert.Equal(phase, HeapPhases.Of(HeapMethods.All[method], age, since));

    [Fact]
    public void Of_EachMethodTurnedOnItsDays_NeverGoesBackButByATurning()
    {
        foreach (var method in HeapMethods.All.Values)
        {
            var phases = Enumerable.Range(0, 200).Select(age => HeapPhases.Of(method, age, null)!.Value).ToList();
            Assert.Equal(HeapPhase.Fresh, phases[0]);
            Assert.Equal(HeapPhase.Curing, phases[^1]);
            Assert.All(
                Enumerable.Range(1, 199).Where(age => phases[age] < phases[age - 1]),
                age => Assert.Contains(age, method.TurnDays));
        }
    }

    [Fact]
    public void Of_AgeNotKnown_IsNotKnown() => Assert.Null(HeapPhases.Of(HeapMethods.Usual, null, 3));

    [Fact]
    public void Of_NegativeDays_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => HeapPhases.Of(HeapMethods.Usual, -1, null));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeapPhases.Of(HeapMethods.Usual, 9, -1));
    }

    [Theory]
    [InlineData(4, 1, true)] // planned on days 3, 4 and 5: one a day
    [InlineData(4, 0, false)]
    [InlineData(6, 2, true)] // the one of day 5 was missed
    [InlineData(6, 1, false)]
    [InlineData(12, null, true)]
    [InlineData(11, null, false)]
    [InlineData(null, 3, false)]
    public void IsTurnDue_OnADay_HoldsWhenOneIsPlannedOrWasMissed(int? age, int? since, bool isDue) =>
        Assert.Equal(isDue, HeapPhases.IsTurnDue(HeapMethods.Usual, age, since));
}
