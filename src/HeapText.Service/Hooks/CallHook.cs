namespace HeapText.Service.Hooks;

/// <summary>Missed calls: <c>POST /calls/{line}</c>. The caller is texted where the talk stands.</summary>
internal static class CallHook
{
    /// <summary>Maps the route.</summary>
    public static void MapCallHook(this IEndpointRouteBuilder routes)
    {
        routes.MapHook("/calls/{line}", Take)
            .WithSummary("A missed call from a farmer's phone. Idempotent on id for 7 days.")
            .TakesJson<MissedCallMessage>()
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(string line, HttpContext context)
    {
        var (entry, refused) = await HookEntry.Open(HookKind.Calls, line, context);
        if (entry is null) return refused!;
        var form = entry.Line.Form;
        var calls = form.ReadCalls(entry.Request, entry.Line);
        return await HookTurn.TakeAll(
            context, calls, static call => call.From.Value,
            static (receiver, call, cancel) => receiver.Ring(call, cancel),
            duplicate => form.AnswerCalls(calls.Taken, duplicate));
    }
}

/// <summary>A missed call as the gateway posts it.</summary>
/// <param name="Id">The gateway's id of the call.</param>
/// <param name="From">The farmer's number.</param>
internal sealed record MissedCallMessage(string Id, string From);
