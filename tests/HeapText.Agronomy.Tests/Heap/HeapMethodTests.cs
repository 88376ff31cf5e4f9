using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class HeapMethodTests
{
    /// <summary>Common practice, no source: a first turning, one on each of the next two days, then weekly, four in
    /// all.</summary>
    [Fact]
    public void NextTurnDay_EachDoneOnItsDay_FollowsThePractice()
    {
        var method = new HeapMethod();
        List<int> days = [];
        while (method.NextTurnDay(days.Count, days.LastOrDefault()) is { } day) days.Add(day);

        Assert.Equal([3, 4, 5, 12], days);
    }

    [Fact]
    public void NextTurnDay_TurnedLate_CountsFromTheDayItWasDone() =>
        Assert.Equal(9, new HeapMethod().NextTurnDay(turnsDone: 1, lastTurnDay: 8));

    [Fact]
    public void NextTurnDay_AllDone_IsNone() => Assert.Null(new HeapMethod().NextTurnDay(4, 12));

    [Fact]
    public void Faults_FiguresOutOfRange_NamesEachWithItsRange()
    {
        var faults = new HeapMethod { Turns = 0, FirstTurnDay = 99 }.Faults();

        Assert.Equal(["FirstTurnDay is 99: give 1 to 30", "Turns is 0: give 1 to 20"], faults);
    }

    [Fact]
    public void Faults_AsShipped_AreNone() => Assert.Empty(new HeapMethod().Faults());
}
