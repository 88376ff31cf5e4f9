using HeapText.Dialog.Ports;

namespace HeapText.Service.Hooks;

/// <summary>Receipts: <c>POST /receipts/{line}</c>, how a message ended that the gateway took.</summary>
internal static class ReceiptHook
{
    /// <summary>Maps the route.</summary>
    public static void MapReceiptHook(this IEndpointRouteBuilder routes)
    {
        routes.MapHook("/receipts/{line}", Take)
            .WithSummary("How a message ended. One of a message nobody knows is kept for an hour.")
            .TakesJson<ReceiptMessage>()
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(string line, HttpContext context)
    {
        var (entry, refused) = await HookEntry.Open(HookKind.Receipts, line, context);
        if (entry is null) return refused!;
        var form = entry.Line.Form;
        var reports = form.ReadReceipts(entry.Request, entry.Line, entry.At);
        return await HookTurn.TakeAll(
            context, reports, static report => report.Message,
            static async (receiver, report, cancel) =>
                report.Receipt is null
                || await receiver.Note(report.Receipt, cancel) == NoteOutcome.Unchanged,
            duplicate => form.AnswerReceipts(reports.Taken, duplicate));
    }
}

/// <summary>A receipt as the gateway posts it.</summary>
/// <param name="Message">The id we sent the message under.</param>
/// <param name="State">delivered, failed, expired or rejected.</param>
/// <param name="At">When, if the gateway knows.</param>
internal sealed record ReceiptMessage(string Message, string State, DateTimeOffset? At);
