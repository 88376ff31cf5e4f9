using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class HeapMethodTests
{
    /// <summary>Common practice, no source: a first turning, one on each of the next two days, then weekly, four in
    /// all.</summary>
    [Fact]
    public void NextTurnDay_EachDoneOnItsDay_FollowsThePractice()
    {
        var method = HeapMethods.Usual;
        List<int> days = [];
        while (method.NextTurnDay(days.Count, days.LastOrDefault()) is { } day) days.Add(day);

        Assert.Equal([3, 4, 5, 12], days);
    }

    [Fact]
    public void NextTurnDay_TurnedLate_CountsFromTheDayItWasDone() =>
        Assert.Equal(9, HeapMethods.Usual.NextTurnDay(turnsDone: 1, lastTurnDay: 8));

    [Fact]
    public void NextTurnDay_AllDone_IsNone() => Assert.Null(HeapMethods.Usual.NextTurnDay(4, 12));

    [Fact]
    public void Faults_FiguresOutOfRange_NamesEachWithItsRange()
    {
        var faults = (HeapMethods.Usual with { TurnDays = [4, 3], SettleDays = 1 }).Faults();

        Assert.Equal(["TurnDays must rise, each from 1 to 365", "SettleDays is 1: give 3 to 30"], faults);
    }

    [Fact]
    public void Faults_AsShipped_AreNone() => Assert.Empty(HeapMethods.All.Values.SelectMany(m => m.Faults()));
}
