using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>A predicted course with its band, one value a day.</summary>
internal sealed record Series(string Name, IReadOnlyList<Prediction> Days)
{
    internal static Series CoreOf(string name, Forecast forecast) => new(name,
        [.. forecast.Days.Select(day => new Prediction(day.CoreLowC, day.CoreC, day.CoreHighC))]);

    /// <summary>Carbon to nitrogen, which a forecast does not tell.</summary>
    internal static Series CarbonNitrogenOf(string name, ForecastRequest heap)
    {
        var start = HeapStart.From(heap);
        List<HeapHistory> heaps =
            [.. Member.All.Select(one => HeapHistory.Of(start, one, heap, heap.Days))];
        var weighing = new Weighing([.. Member.All.Select(one => one.Prior)]);
        return new Series(name, [.. Enumerable.Range(0, heap.Days + 1).Select(day =>
        {
            var ratio = weighing.Of(heaps, one => one.Days[day].CarbonNitrogen);
            return new Prediction(ratio.Quantile(0.1), ratio.Quantile(0.5), ratio.Quantile(0.9));
        })]);
    }
}

/// <summary>What a study reports, as a box in the plot.</summary>
internal sealed record Box(double FromDay, double ToDay, double Low, double High, string Label);
