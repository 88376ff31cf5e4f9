using HeapText.Dialog.Ports;

namespace HeapText.Service.Health;

/// <summary>For whoever watches the process: is it alive, and can it take messages.</summary>
internal static class HealthRoutes
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(2);

    /// <summary>Maps the routes.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        var health = routes.MapGroup("/health");
        health.MapGet("/live", () => TypedResults.Ok(new HealthReport(true, [])))
            .WithSummary("200 while the process answers.");
        health.MapGet("/ready", Ready)
            .WithSummary("200 when messages can be taken, else 503 with the reasons.")
            .Produces<HealthReport>().Produces<HealthReport>(StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<IResult> Ready(
        IStore store, LastCommit last, IHostApplicationLifetime lifetime, TimeProvider time)
    {
        var reasons = new List<string>();
        if (lifetime.ApplicationStopping.IsCancellationRequested) reasons.Add("The service is stopping.");
        if (!await Answers(store, time)) reasons.Add("The store does not answer.");
        else if (last.HasFailed) reasons.Add("The store answers, but the last text was not kept: is it full or locked?");
        var report = new HealthReport(reasons.Count == 0, reasons);
        return reasons.Count == 0
            ? TypedResults.Ok(report)
            : TypedResults.Json(report, statusCode: StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<bool> Answers(IStore store, TimeProvider time)
    {
        using var deadline = new CancellationTokenSource(LongestWait, time);
        try
        {
            await store.NextWake(deadline.Token).AsTask().WaitAsync(LongestWait, time);
            return true;
        }
        catch (Exception fault)
            when (fault is StoreUnavailableException or OperationCanceledException or TimeoutException)
        {
            return false;
        }
    }
}

/// <summary>What a health check found.</summary>
/// <param name="Healthy">True when nothing is wrong.</param>
/// <param name="Reasons">What is wrong, in words.</param>
internal sealed record HealthReport(bool Healthy, IReadOnlyList<string> Reasons);
