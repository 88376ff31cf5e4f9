using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>What a study reports, what the model says of it, and how that is known to compare.</summary>
/// <param name="What">The measured thing, with its unit.</param>
/// <param name="Low">Least reported.</param>
/// <param name="High">Most reported; infinite for "more than".</param>
/// <param name="Predicted">What the model says.</param>
/// <param name="Recorded">The verdict as committed: a hit must stay one, a miss is written down as one.</param>
internal sealed record Claim(string What, double Low, double High, Prediction Predicted, Verdict Recorded)
{
    internal Verdict Verdict =>
        Predicted.Likely >= Low && Predicted.Likely <= High ? Verdict.Hit
        : Predicted.High >= Low && Predicted.Low <= High ? Verdict.InBand
        : Verdict.Miss;
}

/// <summary>How a prediction compares with a report.</summary>
internal enum Verdict
{
    /// <summary>The likely value lies within the report.</summary>
    Hit,

    /// <summary>The likely value does not, the band does.</summary>
    InBand,

    /// <summary>Neither does.</summary>
    Miss,
}

/// <summary>A predicted value with its band.</summary>
internal readonly record struct Prediction(double Low, double Likely, double High)
{
    private const double CuringDays = 30;
    private const double Never = 999;

    internal static Prediction Exactly(double value) => new(value, value, value);

    internal static Prediction Peak(Forecast forecast) => OfDay(forecast, forecast.PeakDay);

    internal static Prediction PeakDay(Forecast forecast)
    {
        double[] days =
        [
            forecast.PeakDay,
            forecast.Days.MaxBy(day => day.CoreHighC)!.Day,
            forecast.Days.MaxBy(day => day.CoreLowC)!.Day,
        ];
        return new Prediction(days.Min(), forecast.PeakDay, days.Max());
    }

    /// <summary>The hottest of some days. [C]</summary>
    internal static Prediction Hottest(Forecast forecast, int from, int to) =>
        OfDay(forecast, forecast.Days.Where(day => day.Day >= from && day.Day <= to).MaxBy(day => day.CoreC)!.Day);

    internal static Prediction DaysAbove(Forecast forecast, double celsius) => new(
        forecast.Days.Count(day => day.CoreLowC >= celsius),
        forecast.Days.Count(day => day.CoreC >= celsius),
        forecast.Days.Count(day => day.CoreHighC >= celsius));

    /// <summary>First day from which the core stays at or below a temperature.</summary>
    internal static Prediction CoolFrom(Forecast forecast, double celsius) => new(
        DayAfter(forecast, day => day.CoreLowC > celsius),
        DayAfter(forecast, day => day.CoreC > celsius),
        DayAfter(forecast, day => day.CoreHighC > celsius));

    /// <summary>Ready, curing included. [d]</summary>
    internal static Prediction Ready(Forecast forecast) => new(
        forecast.ReadyDay.Early ?? Never, forecast.ReadyDay.Likely ?? Never, forecast.ReadyDay.Late ?? Never);

    /// <summary>Stable, before curing. [d]</summary>
    internal static Prediction Stable(Forecast forecast)
    {
        var ready = Ready(forecast);
        return new Prediction(ready.Low - CuringDays, ready.Likely - CuringDays, ready.High - CuringDays);
    }

    private static Prediction OfDay(Forecast forecast, int day) =>
        new(forecast.Days[day].CoreLowC, forecast.Days[day].CoreC, forecast.Days[day].CoreHighC);

    private static double DayAfter(Forecast forecast, Func<ForecastDay, bool> isHot) =>
        forecast.Days.Where(isHot).Select(day => day.Day + 1).DefaultIfEmpty(0).Max();
}
