using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Use;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>What is to be expected of a heap that stands, by its recipe, turnings and checks so far.</summary>
internal static class Foretelling
{
    private const double LitresOfBucket = 20;

    /// <summary>A ready day is told no closer than this either way. [d] Chosen: checks come a week apart.</summary>
    private const int LeastMarginDays = 7;

    /// <summary>The outlook of a heap; null where its record does not hold what a forecast needs.</summary>
    /// <remarks>Takes about a millisecond: worked out at a turning and kept, not at every message.</remarks>
    public static HeapOutlook? Of(Office office, HeapRecord heap, Rod? rod)
    {
        if (heap.BuiltOn is not { } built) return null;
        var method = office.Methods[heap.Method];
        var total = heap.Plan.PerRound
            .Select(portion => new StockItem(
                portion.Material, (double)portion.Amount * heap.Plan.Rounds, portion.Measure)
            {
                Given = office.District.For(portion.Material),
            }).ToList();
        var (parts, _) = ForecastParts.Measured(total, office.District.LocalMeasures());
        if (parts is null) return null;
        var turnDays = TurnDays(heap, method);
        var request = new ForecastRequest
        {
            Parts = parts,
            WaterLitres = (double)heap.Plan.WaterBucketsPerRound * heap.Plan.Rounds * LitresOfBucket,
            Dimensions = new HeapDimensions(heap.Plan.Width, heap.Plan.Length, heap.Plan.Height),
            AmbientC = office.AmbientC,
            TurnDays = turnDays,
            CuringDays = method.CuringDays,
            Checks =
            [
                .. heap.Checks.Where(check => check.On >= built).Select(check => new FieldCheck(
                    HeapHeat.DayOf(heap, check.On), check.Heat, check.Moisture, HeapHeat.KindOf(rod))),
            ],
        };
        if (request.Check() is not null) return null;
        var forecast = HeapForecast.Run(request);
        var last = heap.LastTurned is { } turned ? HeapHeat.DayOf(heap, turned) : 0;
        var water = forecast.WaterAtTurnings.FirstOrDefault(turning => turning.Day > last);
        return new HeapOutlook
        {
            WaterLitres = (int)Math.Round(water?.Litres ?? 0),
            ReadyFrom = DayAfter(Min(forecast.ReadyDay.Early, forecast.ReadyDay.Likely - LeastMarginDays)),
            ReadyTo = DayAfter(Max(forecast.ReadyDay.Late, forecast.ReadyDay.Likely + LeastMarginDays)),
            YieldBuckets = (int)Math.Round(CompostAmount.Buckets(forecast.Yield, office.District.LocalMeasures())),
            DaysAbove55 = forecast.DaysAbove55,
        };

        static int? Min(int? one, int? other) => one < other ? one : other ?? one;
        static int? Max(int? one, int? other) => one is null || other is null || one > other ? one : other;
        LocalDate? DayAfter(int? day) => day is { } days ? built.PlusDays(days) : null;
    }

    /// <summary>Days of the turnings that were done, and of those still planned.</summary>
    private static List<int> TurnDays(HeapRecord heap, HeapMethod method)
    {
        List<int> days = [.. heap.TurnedOn.Select(on => HeapHeat.DayOf(heap, on)).Where(day => day > 0).Distinct()];
        while (method.NextTurnDay(days.Count, days.LastOrDefault()) is { } next) days.Add(next);
        return days;
    }
}
