using System.Net.Mime;
using HeapText.Dialog.Ports;
using HeapText.Service.Health;
using HeapText.Service.Turns;

namespace HeapText.Service.Hooks;

/// <summary>Texts coming in: <c>POST /sms/{line}</c>.</summary>
internal static class SmsHook
{
    /// <summary>Maps the route.</summary>
    public static void MapSmsHook(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/sms/{line}", Take)
            .WithSummary("A text from a farmer's phone. Idempotent on id for 7 days.")
            .Accepts<SmsMessage>(MediaTypeNames.Application.Json, MediaTypeNames.Application.FormUrlEncoded)
            .Produces<SmsAccepted>(StatusCodes.Status202Accepted)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status401Unauthorized)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status500InternalServerError)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<IResult> Take(
        string line, HttpContext context, IReadOnlyDictionary<string, InboundLine> lines, TurnRunner turns,
        LastCommit last, TimeProvider time)
    {
        var (entry, refused) = await HookEntry.Open(line, context, lines, time);
        if (entry is null) return refused!;
        if (SmsBody.Read(entry.Body, entry.Line, out var fault) is not { } message) return Faults.BadBody(fault);
        return await Commit(message, context, turns, last, time);
    }

    private static async Task<IResult> Commit(
        Inbound message, HttpContext context, TurnRunner turns, LastCommit last, TimeProvider time)
    {
        // Not the request's own cancellation: a gateway that hangs up early still gets its message taken.
        using var deadline = new CancellationTokenSource(HookEntry.LongestWait, time);
        try
        {
            var duplicate = await turns.Hear(message, deadline.Token);
            // A duplicate was only read.
            if (!duplicate) last.Succeeded();
            return TypedResults.Accepted((string?)null, new SmsAccepted(true, duplicate));
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
}

/// <summary>A text as the gateway posts it.</summary>
/// <param name="Id">The gateway's id of the message.</param>
/// <param name="From">The farmer's number.</param>
/// <param name="To">The number or code the farmer wrote to.</param>
/// <param name="Text">What was written.</param>
/// <param name="SentAt">When, if the gateway knows.</param>
internal sealed record SmsMessage(string Id, string From, string To, string Text, DateTimeOffset? SentAt);

/// <summary>The answer once the message and all its effects are durable.</summary>
/// <param name="Accepted">Always true.</param>
/// <param name="Duplicate">True when this id had its effect before.</param>
internal sealed record SmsAccepted(bool Accepted, bool Duplicate);
