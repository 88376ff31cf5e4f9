using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>What a study reports, what the model says of it, and how that is known to compare.</summary>
/// <param name="What">The measured thing, with its unit.</param>
/// <param name="Low">Least reported.</param>
/// <param name="High">Most reported; infinite for "more than".</param>
/// <param name="Predicted">What the model says.</param>
/// <param name="Recorded">The verdict as committed: a hit must stay one, a miss is written down as one.</param>
internal sealed record Claim(
    string What, double Low, double High, Func<Prediction> Predicted, Verdict Recorded)
{
    internal Verdict Verdict
    {
        get
        {
            var predicted = Predicted();
            return predicted.Likely >= Low && predicted.Likely <= High ? Verdict.Hit
                : predicted.High >= Low && predicted.Low <= High ? Verdict.InBand
                : Verdict.Miss;
        }
    }
}

/// <summary>A predicted value with its band.</summary>
internal readonly record struct Prediction(double Low, double Likely, double High)
{
    internal static Prediction Peak(Forecast forecast) => OfDay(forecast, forecast.PeakDay);

    internal static Prediction PeakDay(Forecast forecast) => new(
        forecast.Days.MaxBy(day => day.CoreHighC)!.Day,
        forecast.PeakDay,
        forecast.Days.MaxBy(day => day.CoreLowC)!.Day);

    /// <summary>The hottest of some days.</summary>
    internal static Prediction Hottest(Forecast forecast, int from, int to) =>
        OfDay(forecast, forecast.Days.Where(day => day.Day >= from && day.Day <= to).MaxBy(day => day.CoreC)!.Day);

    internal static Prediction DaysAbove(Forecast forecast, double celsius) => new(
        forecast.Days.Count(day => day.CoreLowC >= celsius),
        forecast.Days.Count(day => day.CoreC >= celsius),
        forecast.Days.Count(day => day.CoreHighC >= celsius));

    /// <summary>First day from which the core stays within some degrees of the air.</summary>
    internal static Prediction CoolDay(Forecast forecast, double celsius) => new(
        LastAbove(forecast, celsius, day => day.CoreLowC),
        LastAbove(forecast, celsius, day => day.CoreC),
        LastAbove(forecast, celsius, day => day.CoreHighC - 5));

    internal static Prediction Ready(Forecast forecast) => new(
        forecast.ReadyDay.Early ?? 999, forecast.ReadyDay.Likely ?? 999, forecast.ReadyDay.Late ?? 999);

    private static Prediction OfDay(Forecast forecast, int day) =>
        new(forecast.Days[day].CoreLowC, forecast.Days[day].CoreC, forecast.Days[day].CoreHighC);

    private static double LastAbove(Forecast forecast, double celsius, Func<ForecastDay, double> core) =>
        forecast.Days.Where(day => core(day) > celsius).Select(day => day.Day + 1).DefaultIfEmpty(0).Max();
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
