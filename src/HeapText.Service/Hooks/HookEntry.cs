using HeapText.Carriers.Signing;
using NodaTime.Extensions;

namespace HeapText.Service.Hooks;

/// <summary>What every hook checks before it reads: the line, the sender's address, the size, the signature, the type.</summary>
/// <param name="Line">The line it came in on.</param>
/// <param name="Body">The bytes.</param>
internal sealed record HookEntry(InboundLine Line, ReadOnlyMemory<byte> Body)
{
    /// <summary>The entry, or why it is refused.</summary>
    public static async Task<(HookEntry? Entry, IResult? Refused)> Open(
        string line, HttpContext context, IReadOnlyDictionary<string, InboundLine> lines, TimeProvider time)
    {
        if (!lines.TryGetValue(line, out var inbound)) return (null, Faults.UnknownLine(lines.Keys));
        if (!inbound.Allows(context.Connection.RemoteIpAddress)) return (null, Faults.WrongPlace());
        if (await HookBody.Read(context.Request, context.RequestAborted) is not { } body)
            return (null, Faults.TooLarge(HookBody.MostBytes));
        if (inbound.Keys is { } keys && !IsGenuine(keys, context.Request, body, time))
            return (null, Faults.NotGenuine());
        return HookBody.IsJson(context.Request) ? (new HookEntry(inbound, body), null) : (null, Faults.NotJson());
    }

    private static bool IsGenuine(
        IReadOnlyList<WebhookKey> keys, HttpRequest request, ReadOnlyMemory<byte> body, TimeProvider time) =>
        WebhookSignature.IsGenuine(
            keys,
            Single(request, WebhookSignature.IdHeader),
            Single(request, WebhookSignature.TimestampHeader),
            Single(request, WebhookSignature.SignatureHeader),
            body.Span,
            time.GetUtcNow().ToInstant());

    private static string? Single(HttpRequest request, string header) =>
        request.Headers[header] is [var value] ? value : null;
}
