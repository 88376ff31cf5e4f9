using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Forecasting;

/// <summary>Says what to expect of a heap: heat, water to add, when it is ready, how much it gives.</summary>
/// <remarks>
/// Nineteen heaps of the same recipe run side by side, each with other multipliers of what is known worst; farmers'
/// checks weigh them. Equations, symbols and limits: docs/agronomy/forecast.md; measured against reported behaviour:
/// docs/agronomy/validation.md.
/// </remarks>
public static class HeapForecast
{
    private const double Low = 0.1, Middle = 0.5, High = 0.9, HotC = 55;

    // No published model keeps within 5 C: a narrower band would claim too much. [MASON]
    private const double LeastBandC = 5;

    /// <summary>The forecast of a heap.</summary>
    /// <param name="request">A request that <see cref="ForecastRequest.Check"/> finds no fault with.</param>
    /// <exception cref="ArgumentException">The request has a fault.</exception>
    public static Forecast Run(ForecastRequest request)
    {
        if (request.Check() is { } fault)
        {
            throw new ArgumentException(fault.ToString(), nameof(request));
        }

        var lastDay = request.Checks.Select(check => check.Day).Append(request.Days).Max();
        var start = HeapStart.From(request);
        List<HeapHistory> heaps = [.. Member.All.Select(one => HeapHistory.Of(start, one, request, lastDay))];
        var weighing = new Weighing(Weights(request, heaps));
        List<ForecastDay> days =
            [.. Enumerable.Range(0, request.Days + 1).Select(day => DayOf(weighing, heaps, day))];
        var peak = days.MaxBy(day => day.CoreC)!;
        var ready = weighing.Of(heaps, heap => heap.ReadyDay);
        return new Forecast
        {
            Days = days,
            PeakC = peak.CoreC,
            PeakDay = peak.Day,
            DaysAbove55 = days.Count(day => day.CoreC >= HotC),
            ReadyDay = new ReadyDay(
                Known(ready.Quantile(Low)), Known(ready.Quantile(Middle)), Known(ready.Quantile(High))),
            Yield = Mass.FromKilograms(
                weighing.Of(heaps, heap => heap.Yield.Dry + heap.Yield.Water).Quantile(Middle)),
            YieldVolume = Volume.FromLitres(
                1000 * weighing.Of(heaps, heap => heap.Yield.CubicMetres).Quantile(Middle)),
            WaterAtTurnings = [.. WaterOf(request, weighing, heaps)],
        };
    }

    private static double[] Weights(ForecastRequest request, List<HeapHistory> heaps)
    {
        // In logarithms, so that a year of checks does not run out of small numbers.
        var logs = heaps.Select((heap, i) => Math.Log(Member.All[i].Prior) + request.Checks
            .Sum(check => Math.Log(CheckLikelihood.Of(
                check, heap.Days[check.Day].CoreC, 100 * heap.Days[check.Day].Moisture, request.AmbientC)))).ToArray();
        var weights = logs.Select(log => Math.Exp(log - logs.Max())).ToArray();
        var sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }

    private static ForecastDay DayOf(Weighing weighing, List<HeapHistory> heaps, int day)
    {
        var core = weighing.Of(heaps, heap => heap.Days[day].CoreC);
        var likely = Tenths(core.Quantile(Middle));
        return new ForecastDay(
            day,
            likely,
            Tenths(Math.Min(core.Quantile(Low), likely - LeastBandC)),
            Tenths(Math.Max(core.Quantile(High), likely + LeastBandC)),
            100 * weighing.Of(heaps, heap => heap.Days[day].Moisture).Quantile(Middle),
            weighing.Of(heaps, heap => heap.Days[day].Dry).Quantile(Middle),
            1000 * weighing.Of(heaps, heap => heap.Days[day].CubicMetres).Quantile(Middle));
    }

    private static IEnumerable<TurningWater> WaterOf(
        ForecastRequest request, Weighing weighing, List<HeapHistory> heaps) => request.TurnDays
            .Where(day => day <= request.Days).Distinct().Order()
            .Select(day => new TurningWater(
                day, weighing.Of(heaps, heap => heap.Watered.GetValueOrDefault(day)).Quantile(Middle)))
            .Where(water => water.Litres >= 1);

    // Adding nought turns a negative nought into a plain one.
    private static double Tenths(double value) => Math.Round(value, 1) + 0.0;

    private static int? Known(double day) => double.IsFinite(day) ? (int)day : null;
}
