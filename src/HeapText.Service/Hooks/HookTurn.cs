using System.Net.Mime;
using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using HeapText.Service.Health;

namespace HeapText.Service.Hooks;

/// <summary>Takes what a hook has read, and says what became of it.</summary>
internal static partial class HookTurn
{
    // A gateway hears within 5 s that the store stalls (robustness), so we stop waiting a little earlier.
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(4.5);

    /// <summary>Takes the messages of a request, each farmer's in their order, and answers once all are
    /// durable.</summary>
    /// <param name="context">The request.</param>
    /// <param name="reading">What was read. What cannot be read is left out where something else can.</param>
    /// <param name="owner">Whose a message is.</param>
    /// <param name="take">Takes one; true when it had its effect before.</param>
    /// <param name="answer">The answer; it is given whether all had their effect before.</param>
    public static Task<IResult> TakeAll<T>(
        HttpContext context, HookReading<T> reading, Func<T, string> owner,
        Func<IReceiver, T, CancellationToken, Task<bool>> take, Func<bool, HookAnswer> answer)
    {
        if (!reading.IsUsable) return Task.FromResult<IResult>(Faults.BadBody(string.Join(' ', reading.Faults)));
        if (reading.Faults.Count > 0) LogLeftOut(context, reading.Faults);
        return Take(context, async (receiver, cancel) =>
        {
            var taken = await Task.WhenAll(reading.Taken.GroupBy(owner).Select(async own =>
            {
                var duplicate = true;
                foreach (var message in own) duplicate &= await take(receiver, message, cancel);
                return duplicate;
            }));
            var duplicate = taken.All(one => one);
            return (answer(duplicate), duplicate);
        });
    }

    /// <summary>Runs the turn, and turns what went wrong into a problem.</summary>
    /// <param name="context">The request.</param>
    /// <param name="turn">Takes the turn; gives what is answered, and whether it had its effect before.</param>
    public static async Task<IResult> Take(
        HttpContext context, Func<IReceiver, CancellationToken, Task<(HookAnswer Answer, bool Duplicate)>> turn)
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
            return new HookResult(answer);
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

    /// <summary>Says in the document what the native form takes, and lets in any type: what a mapping says may be of
    /// another, and <see cref="ILineForm.Refuse"/> judges.</summary>
    public static RouteHandlerBuilder TakesJson<T>(this RouteHandlerBuilder route)
        where T : notnull =>
        route.Accepts<T>(MediaTypeNames.Application.Json, "*/*");

    /// <summary>Says in the document which problems a hook answers with.</summary>
    public static void ProducesHookProblems(this RouteHandlerBuilder route)
    {
        int[] problems = [400, 401, 403, 404, 405, 413, 415, 500, 503];
        foreach (var status in problems) route.ProducesProblem(status);
    }

    /// <summary>Maps a hook: POST, which the native form takes, and what else a mapping may say.</summary>
    public static RouteHandlerBuilder MapHook(this IEndpointRouteBuilder routes, string pattern, Delegate take)
    {
        routes.MapMethods(pattern, [HttpMethods.Get, HttpMethods.Put], take).ExcludeFromDescription();
        return routes.MapPost(pattern, take);
    }

    private static void LogLeftOut(HttpContext context, IReadOnlyList<string> faults) => LogLeftOut(
        context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(HookTurn)),
        $"{context.Request.RouteValues["line"]}", string.Join(' ', faults));

    [LoggerMessage(120, LogLevel.Warning,
        "Line {Line} brought several messages at once; those that cannot be read were left out: {Faults}")]
    private static partial void LogLeftOut(ILogger logger, string line, string faults);
}
