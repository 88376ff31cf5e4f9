using System.CommandLine;
using HeapText.Agronomy;
using HeapText.Agronomy.Forecasting;

namespace HeapText.Service.Verbs;

/// <summary>The verb <c>forecast</c>: how a heap will go, from what it is built of.</summary>
internal static class ForecastVerb
{
    public static Command Create() => JsonVerb.Command(
        "forecast", "Reads a heap as JSON, by recipe or parts, and writes its heat, water, ready date and yield.", Run);

    internal static int Run(TextReader input, TextWriter output, TextWriter error) =>
        JsonVerb.Run<ForecastInput, ForecastOutput>(input, output, error, Answer);

    private static (ForecastOutput?, InputFault?) Answer(ForecastInput input)
    {
        var (request, fault) = input.ToRequest();
        fault ??= request!.Check();
        return fault is null ? (ForecastOutput.From(request!, HeapForecast.Run(request!)), null) : (null, fault);
    }
}
