using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class HeapMethodTests
{
    /// <summary>Sources of the days: methods.csv, each row; days 15, 30 and 60 of the pit as read in an IASRI course.
    /// The usual method: a first turning, one on each of the next two days, then after a week, four in all: common
    /// practice, no source.</summary>
    [Theory]
    [InlineData("hot-turned", 3, 6, 9, 12, 15, 22)]
    [InlineData("daily-then-weekly", 3, 4, 5, 12)]
    [InlineData("slow-heap", 30, 60)]
    [InlineData("dry-season-pit", 15, 30, 60)]
    [InlineData("small-ring", 7, 14, 28)]
    public void NextTurnDay_EachDoneOnItsDay_FollowsThePlan(string key, params int[] planned)
    {
        var method = HeapMethods.All[key];
        List<int> days = [];
        while (method.NextTurnDay(days.Count, days.LastOrDefault()) is { } day) days.Add(day);

        Assert.Equal(planned, days);
    }

    [Fact]
    public void NextTurnDay_TurnedLate_CountsFromTheDayItWasDone() =>
        Assert.Equal(9, HeapMethods.Usual.NextTurnDay(turnsDone: 1, lastTurnDay: 8));

    [Fact]
    public void NextTurnDay_AllDone_IsNone() =>
        Assert.All(HeapMethods.All.Values, method => Assert.Null(method.NextTurnDay(method.Turns, 99)));

    /// <summary>40 CFR 503 App. B, from memory: five turnings within 15 hot days, which begin about day 3.</summary>
    [Fact]
    public void TurnDays_OfHotTurned_AreFiveInTheFifteenHotDays() =>
        Assert.Equal(5, HeapMethods.All["hot-turned"].TurnDays.Count(day => day is >= 3 and < 18));

    /// <summary>Müller-Sämann 1986 as quoted by FAO Soils Bulletin 80: heaps of 1 m3, pits of 70 cm at most.</summary>
    [Fact]
    public void Bounds_AsShipped_AreThoseOfTheSource()
    {
        var heaps = HeapMethods.All.Values.Where(method => method.Bounds.Form != HeapForm.Ring);

        Assert.All(heaps, method => Assert.Equal(1000, method.Bounds.LeastLitres));
        Assert.Equal(0.7, HeapMethods.All["dry-season-pit"].Bounds.HighestM);
    }

    [Fact]
    public void Faults_FiguresOutOfRange_NamesEachWithItsRange()
    {
        var faults = (HeapMethods.Usual with { TurnDays = [4, 3], SettleDays = 1 }).Faults();

        Assert.Equal(["TurnDays must rise, each from 1 to 365", "SettleDays is 1: give 3 to 30"], faults);
    }

    [Fact]
    public void Faults_ReadyBeforeItsOwnDaysEnd_NamesTheDay() =>
        Assert.Equal(
            ["ReadyLowDays is 56: give 87 to 700"],
            (HeapMethods.Usual with { TurnDays = [10, 50] }).Faults());

    [Fact]
    public void Faults_NoTurning_IsNamed() =>
        Assert.Contains("TurnDays must be 1 to 20 days", (HeapMethods.Usual with { TurnDays = [] }).Faults());

    [Fact]
    public void Faults_AsShipped_AreNone() => Assert.Empty(HeapMethods.All.Values.SelectMany(m => m.Faults()));

    [Fact]
    public void Rows_AsShipped_NameSourceAndConfidence()
    {
        var rows = CsvRows.OfResource("Heap.methods.csv").ToList();

        Assert.All(rows, row => Assert.Matches("^[ABCD]$", row["confidence"]));
        Assert.All(rows, row => Assert.Matches(@"\[[A-Z0-9]+\]|common practice, no source", row["source"]));
        Assert.Empty(rows.SelectMany(row => SourceKeys.In(row["source"])).Except(SourceKeys.Known));
    }
}
