using HeapText.Dialog.Ports;
using HeapText.Service.Turns;

namespace HeapText.Service.Hooks;

/// <summary>Texts coming in: <c>POST /sms/{line}</c>.</summary>
internal static class SmsHook
{
    /// <summary>Maps the route.</summary>
    public static void MapSmsHook(this IEndpointRouteBuilder routes)
    {
        routes.MapHook("/sms/{line}", Take)
            .WithSummary("A text from a farmer's phone. Idempotent on id for 7 days.")
            .TakesJson<SmsMessage>()
            .Produces<HookAccepted>(StatusCodes.Status202Accepted)
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(string line, HttpContext context)
    {
        var (entry, refused) = await HookEntry.Open(HookKind.Sms, line, context);
        if (entry is null) return refused!;
        var form = entry.Line.Form;
        var texts = form.ReadTexts(entry.Request, entry.Line);
        if (form.RepliesInAnswer && texts.Taken is [var text]) return await Reply(text, form, context);
        return await HookTurn.TakeAll(
            context, texts, static text => text.From.Value,
            static (receiver, text, cancel) => receiver.Hear(text, cancel),
            duplicate => form.AnswerTexts(texts.Taken, null, duplicate));
    }

    private static Task<IResult> Reply(Inbound text, ILineForm form, HttpContext context) =>
        HookTurn.Take(context, async (_, cancel) =>
        {
            var turns = context.RequestServices.GetRequiredService<TurnRunner>();
            var (reply, duplicate) = await turns.Reply(text, cancel);
            return (form.AnswerTexts([text], reply, duplicate), duplicate);
        });
}

/// <summary>A text as the gateway posts it.</summary>
/// <param name="Id">The gateway's id of the message.</param>
/// <param name="From">The farmer's number.</param>
/// <param name="To">The number or code the farmer wrote to.</param>
/// <param name="Text">What was written.</param>
/// <param name="SentAt">When, if the gateway knows.</param>
internal sealed record SmsMessage(string Id, string From, string To, string Text, DateTimeOffset? SentAt);
