namespace HeapText.Agronomy.Heap;

/// <summary>How a heap is turned and finished, as data an office may change.</summary>
/// <remarks>
/// Days count from the day of building, which is day 0. A turning is planned from the day the one before was really
/// done.
/// <para>Common practice, no source: a first turning, one on each of the next two days, then weekly, four in all.
/// First turning by day 3: [MSINGI]. A turned and wetted heap that does not warm again within 5 to 7 days is past its
/// hot time: [REHEAT], from memory. Curing of a month: common practice, no source.</para>
/// </remarks>
public sealed record HeapMethod
{
    /// <summary>Key of the method.</summary>
    public string Key { get; init; } = "daily-then-weekly";

    /// <summary>Day of the first turning. [d after building, 1 to 30]</summary>
    public int FirstTurnDay { get; init; } = 3;

    /// <summary>How many turnings follow on the days right after the first. [0 to 10]</summary>
    public int DailyTurns { get; init; } = 2;

    /// <summary>Days between the later turnings. [d, 1 to 60]</summary>
    public int DaysBetweenTurns { get; init; } = 7;

    /// <summary>How many turnings in all. [1 to 20]</summary>
    public int Turns { get; init; } = 4;

    /// <summary>Days from the last turning to the question whether it warmed again. [d, 3 to 30]</summary>
    public int SettleDays { get; init; } = 7;

    /// <summary>Days of curing after the heat is over. [d, 0 to 180]</summary>
    public int CuringDays { get; init; } = 30;

    /// <summary>Days of further rest when it does not look ready. [d, 1 to 60]</summary>
    public int MoreRestDays { get; init; } = 14;

    /// <summary>Every fault of these figures, each naming the figure and its range; empty when there is none.</summary>
    public IReadOnlyList<string> Faults()
    {
        List<string> faults = [];
        Check(nameof(FirstTurnDay), FirstTurnDay, 1, 30);
        Check(nameof(DailyTurns), DailyTurns, 0, 10);
        Check(nameof(DaysBetweenTurns), DaysBetweenTurns, 1, 60);
        Check(nameof(Turns), Turns, 1, 20);
        Check(nameof(SettleDays), SettleDays, 3, 30);
        Check(nameof(CuringDays), CuringDays, 0, 180);
        Check(nameof(MoreRestDays), MoreRestDays, 1, 60);
        return faults;

        void Check(string name, int value, int low, int high)
        {
            if (value < low || value > high) faults.Add($"{name} is {value}: give {low} to {high}");
        }
    }

    /// <summary>The day of the next planned turning.</summary>
    /// <param name="turnsDone">How many planned turnings were done.</param>
    /// <param name="lastTurnDay">Day of the last of them [d after building]; not read when none was done.</param>
    /// <returns>The day [d after building]; null when all turnings are done.</returns>
    public int? NextTurnDay(int turnsDone, int lastTurnDay)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(turnsDone);
        if (turnsDone >= Turns) return null;
        if (turnsDone == 0) return FirstTurnDay;
        return lastTurnDay + (turnsDone <= DailyTurns ? 1 : DaysBetweenTurns);
    }
}
