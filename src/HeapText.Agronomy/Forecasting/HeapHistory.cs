namespace HeapText.Agronomy.Forecasting;

/// <summary>What became of one heap, day by day, each before any turning of that day.</summary>
internal sealed class HeapHistory
{
    private const int DaysBetweenChecks = 7;

    private HeapHistory(int days) => Days = new HeapDay[days + 1];

    internal HeapDay[] Days { get; }

    /// <summary>Water added at turnings. [L]</summary>
    internal Dictionary<int, double> Watered { get; } = [];

    /// <summary>Stable and cured; infinite when not within a year. [d]</summary>
    internal double ReadyDay { get; private set; } = double.PositiveInfinity;

    /// <summary>The heap when ready, or after a year.</summary>
    internal HeapDay Yield { get; private set; }

    /// <summary>Lets a heap run its course.</summary>
    internal static HeapHistory Of(HeapStart start, Member member, ForecastRequest request, int days)
    {
        var history = new HeapHistory(days);
        var heap = new HeapRun(start, member, request.AmbientC);
        var turnings = request.TurnDays.ToHashSet();
        var lastTurn = request.TurnDays.DefaultIfEmpty(0).Max();
        var waters = request.Watering == Watering.WhenDry;
        var stableDay = int.MaxValue;
        for (var day = 0; day <= Parameters.HorizonDays; day++)
        {
            var now = heap.Now;
            if (day <= days) history.Days[day] = now;
            if (double.IsInfinity(history.ReadyDay)) history.Yield = now;
            if (stableDay == int.MaxValue && heap.IsStable) stableDay = day;
            if (stableDay != int.MaxValue && day == stableDay + request.CuringDays) history.SetReady(day, now);
            if (day >= days && double.IsFinite(history.ReadyDay)) break;
            if (turnings.Contains(day)) history.Watered[day] = heap.Turn(waters);
            else if (waters && day > lastTurn && (day - lastTurn) % DaysBetweenChecks == 0) heap.WaterWhenDry();
            heap.PassDay();
        }

        return history;
    }

    private void SetReady(int day, HeapDay now) => (ReadyDay, Yield) = (day, now);
}

/// <summary>One heap on one day.</summary>
/// <param name="CoreC">Core temperature. [C]</param>
/// <param name="Moisture">Of the whole. [kg/kg, wet]</param>
/// <param name="Dry">Dry matter. [kg]</param>
/// <param name="Water">Water. [kg]</param>
/// <param name="CubicMetres">Volume. [m3]</param>
/// <param name="CarbonNitrogen">C/N of what is left; infinite without nitrogen. [kg C / kg N]</param>
internal readonly record struct HeapDay(
    double CoreC, double Moisture, double Dry, double Water, double CubicMetres, double CarbonNitrogen);
