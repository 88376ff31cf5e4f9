using System.Net.Mime;
using NodaTime.Extensions;

namespace HeapText.Service.Hooks;

/// <summary>Receipts: <c>POST /receipts/{line}</c>, how a message ended that the gateway took.</summary>
internal static class ReceiptHook
{
    /// <summary>Maps the route.</summary>
    public static void MapReceiptHook(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/receipts/{line}", Take)
            .WithSummary("How a message ended. Idempotent on message; a receipt of a message nobody knows is kept an hour.")
            .Accepts<ReceiptMessage>(MediaTypeNames.Application.Json)
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(
        string line, HttpContext context, IReadOnlyDictionary<string, InboundLine> lines, TimeProvider time)
    {
        var (entry, refused) = await HookEntry.Open(line, context, lines, time);
        if (entry is null) return refused!;
        var now = time.GetUtcNow().ToInstant();
        if (ReceiptBody.Read(entry.Body, entry.Line, now, out var fault) is not { } receipt)
            return Faults.BadBody(fault);
        return await HookTurn.Take(context, async (receiver, cancel) =>
        {
            var duplicate = await receiver.Note(receipt, cancel);
            return (HookTurn.Accepted(duplicate), duplicate);
        });
    }
}

/// <summary>A receipt as the gateway posts it.</summary>
/// <param name="Message">The id we sent the message under.</param>
/// <param name="State">delivered, failed, expired or rejected.</param>
/// <param name="At">When, if the gateway knows.</param>
internal sealed record ReceiptMessage(string Message, string State, DateTimeOffset? At);
