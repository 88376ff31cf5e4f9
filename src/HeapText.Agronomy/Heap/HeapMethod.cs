namespace HeapText.Agronomy.Heap;

/// <summary>How a heap is shaped, turned and finished, as data an office may change.</summary>
/// <remarks>
/// Days count from the day of building, which is day 0. A turning is planned from the day the one before was really
/// done. The methods of methods.csv name the source of their figures; source keys are in docs/agronomy/sources.md.
/// <para>A turned and wetted heap that does not warm again within 5 to 7 days is past its hot time: [REHEAT], from
/// memory. Curing of a month: common practice, no source.</para>
/// </remarks>
public sealed record HeapMethod
{
    private const int MostTurnDay = 365;

    /// <summary>Key of the method.</summary>
    public required string Key { get; init; }

    /// <summary>How big it may be.</summary>
    public required HeapBounds Bounds { get; init; }

    /// <summary>Days of a check without a turning, before the first turning. [d after building, rising]</summary>
    public IReadOnlyList<int> CheckDays { get; init; } = [];

    /// <summary>Days of the planned turnings. [d after building, rising, 1 to 20 of them]</summary>
    public required IReadOnlyList<int> TurnDays { get; init; }

    /// <summary>Days from the last turning to the question whether it warmed again. [d, 3 to 30]</summary>
    public required int SettleDays { get; init; }

    /// <summary>Days of curing after the heat is over. [d, 0 to 180]</summary>
    public required int CuringDays { get; init; }

    /// <summary>Days of further rest when it does not look ready. [d, 1 to 60]</summary>
    public required int MoreRestDays { get; init; }

    /// <summary>Days after which it may be ready at the earliest: not before the last planned turning, settling and
    /// curing are over. [d after building]</summary>
    public required int ReadyLowDays { get; init; }

    /// <summary>Days after which it should be ready at the latest. [d after building]</summary>
    public required int ReadyHighDays { get; init; }

    /// <summary>How many turnings in all.</summary>
    public int Turns => TurnDays.Count;

    /// <summary>Day on which curing is over when every turning is done on its day. [d after building]</summary>
    public int CuredDay => (Turns == 0 ? 0 : TurnDays[^1]) + SettleDays + CuringDays;

    /// <summary>Every fault of these figures, each naming the figure and its range; empty when there is none.</summary>
    public IReadOnlyList<string> Faults()
    {
        List<string> faults = [];
        if (TurnDays.Count is 0 or > 20) faults.Add("TurnDays must be 1 to 20 days");
        CheckDaysRise(nameof(TurnDays), TurnDays);
        CheckDaysRise(nameof(CheckDays), CheckDays);
        if (CheckDays.Count > 0 && TurnDays.Count > 0 && CheckDays[^1] >= TurnDays[0])
            faults.Add("CheckDays must come before the first of TurnDays");
        Check(nameof(SettleDays), SettleDays, 3, 30);
        Check(nameof(CuringDays), CuringDays, 0, 180);
        Check(nameof(MoreRestDays), MoreRestDays, 1, 60);
        Check(nameof(ReadyLowDays), ReadyLowDays, faults.Count > 0 ? 14 : Math.Max(14, CuredDay), 700);
        Check(nameof(ReadyHighDays), ReadyHighDays, ReadyLowDays, 730);
        return faults;

        void Check(string name, int value, int low, int high)
        {
            if (value < low || value > high) faults.Add($"{name} is {value}: give {low} to {high}");
        }

        void CheckDaysRise(string name, IReadOnlyList<int> days)
        {
            if (days.Any(day => day is < 1 or > MostTurnDay) || days.Zip(days.Skip(1)).Any(d => d.First >= d.Second))
                faults.Add($"{name} must rise, each from 1 to {MostTurnDay}");
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
        return turnsDone == 0 ? TurnDays[0] : lastTurnDay + TurnDays[turnsDone] - TurnDays[turnsDone - 1];
    }
}
