using System.Net.Mime;

namespace HeapText.Service.Hooks;

/// <summary>Missed calls: <c>POST /calls/{line}</c>. The caller is texted where the talk stands.</summary>
internal static class CallHook
{
    /// <summary>Maps the route.</summary>
    public static void MapCallHook(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/calls/{line}", Take)
            .WithSummary("A missed call from a farmer's phone. Idempotent on id for 7 days.")
            .Accepts<MissedCallMessage>(MediaTypeNames.Application.Json)
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(
        string line, HttpContext context, IReadOnlyDictionary<string, InboundLine> lines, TimeProvider time)
    {
        var (entry, refused) = await HookEntry.Open(line, context, lines, time);
        if (entry is null) return refused!;
        if (CallBody.Read(entry.Body, entry.Line, out var fault) is not { } call) return Faults.BadBody(fault);
        return await HookTurn.Take(context, async (receiver, cancel) =>
        {
            var duplicate = await receiver.Ring(call, cancel);
            return (HookTurn.Accepted(duplicate), duplicate);
        });
    }
}

/// <summary>A missed call as the gateway posts it.</summary>
/// <param name="Id">The gateway's id of the call.</param>
/// <param name="From">The farmer's number.</param>
internal sealed record MissedCallMessage(string Id, string From);
