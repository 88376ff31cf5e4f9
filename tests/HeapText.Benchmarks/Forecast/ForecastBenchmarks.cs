using BenchmarkDotNet.Attributes;
using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;

namespace HeapText.Benchmarks.Forecast;

/// <summary>How long is a forecast of 90 days for a heap of eight materials, readiness and all nineteen runs in it?
/// At most 2 ms.</summary>
[MemoryDiagnoser]
public class ForecastBenchmarks
{
    private readonly ForecastRequest _heap = new()
    {
        Parts =
        [
            new("rice-straw", 45), new("bean-haulm", 30), new("lantana", 90), new("green-weeds", 60),
            new("goat-manure", 120), new("cow-dung", 60), new("wood-ash", 8), new("rice-bran", 12),
        ],
        WaterLitres = 120,
    };

    private ForecastRequest Checked => _heap with
    {
        Checks =
        [
            new(3, Heat.Hot, Moisture.Good, RodKind.Metal), new(5, Heat.Warm, Moisture.Dry),
            new(9, Heat.Hot, null, RodKind.Wood), new(14, Heat.Warm, Moisture.Good),
        ],
    };

    /// <summary>As planned on the day of building.</summary>
    [Benchmark(Baseline = true)]
    public Agronomy.Forecasting.Forecast Planned() => HeapForecast.Run(_heap);

    /// <summary>With four checks of the farmer.</summary>
    [Benchmark]
    public Agronomy.Forecasting.Forecast WithChecks() => HeapForecast.Run(Checked);
}
