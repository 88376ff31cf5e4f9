using HeapText.Agronomy.Forecasting;

namespace HeapText.Service.Verbs;

/// <summary>What <c>forecast</c> writes. Temperatures are ranges: read <c>coreC</c> with its low and high.</summary>
internal sealed record ForecastOutput(
    IReadOnlyList<ForecastDayOutput> Days,
    double PeakC,
    int PeakDay,
    int DaysAbove55,
    ReadyDay ReadyDay,
    double YieldKg,
    double YieldLitres,
    double YieldBuckets,
    IReadOnlyList<TurningWaterOutput> WaterAtTurnings,
    IReadOnlyList<string> Notes)
{
    private const double LitresPerBucket = 20;

    internal static ForecastOutput From(ForecastRequest request, Forecast forecast) => new(
        [.. forecast.Days.Select(ForecastDayOutput.From)],
        forecast.PeakC,
        forecast.PeakDay,
        forecast.DaysAbove55,
        forecast.ReadyDay,
        Math.Round(forecast.Yield.Kilograms),
        Math.Round(forecast.YieldVolume.Litres),
        Math.Round(forecast.YieldVolume.Litres / LitresPerBucket),
        [.. forecast.WaterAtTurnings.Select(water => new TurningWaterOutput(water.Day, Math.Round(water.Litres)))],
        [.. NotesOf(request, forecast)]);

    private static IEnumerable<string> NotesOf(ForecastRequest request, Forecast forecast)
    {
        if (request.AssumesDensity) yield return "density-assumed";
        if (forecast.DaysAbove55 == 0) yield return "not-likely-to-reach-55";
        if (forecast.ReadyDay.Likely is null) yield return "not-ready-within-a-year";
    }
}

/// <summary>A heap on one day.</summary>
internal sealed record ForecastDayOutput(
    int Day,
    double CoreC,
    double CoreLowC,
    double CoreHighC,
    double MoisturePercent,
    double DryKg,
    double VolumeLitres)
{
    internal static ForecastDayOutput From(ForecastDay day) => new(
        day.Day,
        day.CoreC,
        day.CoreLowC,
        day.CoreHighC,
        Math.Round(day.MoisturePercent, 1),
        Math.Round(day.DryKg, 2),
        Math.Round(day.VolumeLitres, 1));
}

/// <summary>Water to add at a turning.</summary>
internal sealed record TurningWaterOutput(int Day, double Litres);
