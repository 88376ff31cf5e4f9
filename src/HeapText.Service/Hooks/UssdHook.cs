namespace HeapText.Service.Hooks;

/// <summary>Steps of sessions on dialled screens: <c>POST /ussd/{line}</c>.</summary>
internal static class UssdHook
{
    /// <summary>Maps the route.</summary>
    public static void MapUssdHook(this IEndpointRouteBuilder routes)
    {
        routes.MapHook("/ussd/{line}", Take)
            .WithSummary("A step on a phone's dialled screen. The same session and step get the same answer.")
            .TakesJson<UssdStep>()
            .Produces<UssdScreen>()
            .ProducesHookProblems();
    }

    private static async Task<IResult> Take(string line, HttpContext context)
    {
        var (entry, refused) = await HookEntry.Open(HookKind.Ussd, line, context);
        if (entry is null) return refused!;
        var form = entry.Line.Form;
        var steps = form.ReadStep(entry.Request, entry.Line);
        if (steps.Taken is not [var step]) return Faults.BadBody(string.Join(' ', steps.Faults));
        return await HookTurn.Take(context, async (receiver, cancel) =>
        {
            var (screen, duplicate) = await receiver.Dial(step, cancel);
            return (form.AnswerStep(step, screen), duplicate);
        });
    }
}

/// <summary>A step as the gateway posts it.</summary>
/// <param name="Session">The gateway's id of the session.</param>
/// <param name="From">The farmer's number.</param>
/// <param name="Code">The code that was dialled.</param>
/// <param name="Input">The newest entry alone; empty in the first step.</param>
/// <param name="Step">Rises with each entry.</param>
internal sealed record UssdStep(string Session, string From, string Code, string Input, int Step);

/// <summary>What the phone is to show.</summary>
/// <param name="Text">The words, at most 160 septets or 70 UCS-2 units.</param>
/// <param name="Open">False when the session ends with it.</param>
internal sealed record UssdScreen(string Text, bool Open);
