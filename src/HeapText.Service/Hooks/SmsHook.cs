using System.Net.Mime;

namespace HeapText.Service.Hooks;

/// <summary>Texts coming in: <c>POST /sms/{line}</c>.</summary>
internal static class SmsHook
{
    /// <summary>Maps the route.</summary>
    public static void MapSmsHook(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/sms/{line}", Take)
            .WithSummary("A text from a farmer's phone. Idempotent on id for 7 days.")
            .Accepts<SmsMessage>(MediaTypeNames.Application.Json)
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(
        string line, HttpContext context, IReadOnlyDictionary<string, InboundLine> lines, TimeProvider time)
    {
        var (entry, refused) = await HookEntry.Open(line, context, lines, time);
        if (entry is null) return refused!;
        if (SmsBody.Read(entry.Body, entry.Line, out var fault) is not { } message) return Faults.BadBody(fault);
        return await HookTurn.Take(context, async (receiver, cancel) =>
        {
            var duplicate = await receiver.Hear(message, cancel);
            return (HookTurn.Accepted(duplicate), duplicate);
        });
    }
}

/// <summary>A text as the gateway posts it.</summary>
/// <param name="Id">The gateway's id of the message.</param>
/// <param name="From">The farmer's number.</param>
/// <param name="To">The number or code the farmer wrote to.</param>
/// <param name="Text">What was written.</param>
/// <param name="SentAt">When, if the gateway knows.</param>
internal sealed record SmsMessage(string Id, string From, string To, string Text, DateTimeOffset? SentAt);
