using HeapText.Dialog.Ports;
using HeapText.Service.Health;

namespace HeapText.Service.Hooks;

/// <summary>Takes what a hook has read, and says what became of it.</summary>
internal static class HookTurn
{
    // A gateway hears within 5 s that the store stalls (robustness), so we stop waiting a little earlier.
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(4.5);

    /// <summary>Runs the turn, and turns what went wrong into a problem.</summary>
    /// <param name="context">The request.</param>
    /// <param name="turn">Takes the turn; gives what is answered, and whether it had its effect before.</param>
    public static async Task<IResult> Take(
        HttpContext context, Func<IReceiver, CancellationToken, Task<(IResult Answer, bool Duplicate)>> turn)
    {
        var last = context.RequestServices.GetRequiredService<LastCommit>();
        var receiver = context.RequestServices.GetRequiredService<IReceiver>();
        var time = context.RequestServices.GetRequiredService<TimeProvider>();
        // Not the request's own cancellation: a gateway that hangs up early still gets its message taken.
        using var deadline = new CancellationTokenSource(LongestWait, time);
        try
        {
            var (answer, duplicate) = await turn(receiver, deadline.Token);
            // A duplicate was only read.
            if (!duplicate) last.Succeeded();
            return answer;
        }
        catch (TurnFailedException)
        {
            return Faults.Failed();
        }
        catch (Exception fault) when (fault is StoreUnavailableException
            || (fault is OperationCanceledException && deadline.IsCancellationRequested))
        {
            last.Failed();
            return Faults.Busy(context);
        }
    }

    /// <summary>Says in the document which problems a hook answers with.</summary>
    public static void ProducesHookProblems(this RouteHandlerBuilder route)
    {
        int[] problems = [400, 401, 403, 404, 413, 415, 500, 503];
        foreach (var status in problems) route.ProducesProblem(status);
    }

    /// <summary>The answer to what was taken for good.</summary>
    public static IResult Accepted(bool duplicate) =>
        TypedResults.Accepted((string?)null, new HookAccepted(true, duplicate));
}

/// <summary>The answer once the message and all its effects are durable.</summary>
/// <param name="Accepted">Always true.</param>
/// <param name="Duplicate">True when this id had its effect before.</param>
internal sealed record HookAccepted(bool Accepted, bool Duplicate);
