using HeapText.Carriers.Mapped;
using Microsoft.AspNetCore.Http.Features;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Hooks;

/// <summary>What every hook checks before it reads: the line, the sender's address, the method, the size, the proof of
/// who sent it, the type.</summary>
/// <param name="Line">The line it came in on.</param>
/// <param name="Request">The request.</param>
/// <param name="At">When it came in.</param>
internal sealed record HookEntry(InboundLine Line, HookRequest Request, Instant At)
{
    /// <summary>The entry, or why it is refused.</summary>
    public static async Task<(HookEntry? Entry, IResult? Refused)> Open(HookKind hook, string line, HttpContext context)
    {
        var lines = context.RequestServices.GetRequiredService<IReadOnlyDictionary<string, InboundLine>>();
        if (!lines.TryGetValue(line, out var inbound)) return (null, Faults.UnknownLine(lines.Keys));
        if (!inbound.Allows(context.Connection.RemoteIpAddress)) return (null, Faults.WrongPlace());
        var methods = inbound.Form.Methods(hook);
        if (methods.Count == 0) return (null, Faults.NoSuchHook(line, hook));
        if (!methods.Contains(context.Request.Method)) return (null, Faults.WrongMethod(context, methods));
        if (await HookBody.Read(context.Request, context.RequestAborted) is not { } body)
            return (null, Faults.TooLarge(HookBody.MostBytes));
        var request = Of(context, body);
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow().ToInstant();
        if (!inbound.Form.IsGenuine(request, now)) return (null, Faults.NotGenuine(inbound.Form.HowToProve));
        return inbound.Form.Refuse(request) is { } refused
            ? (null, refused)
            : (new HookEntry(inbound, request, now), null);
    }

    // The path as it was sent, since signatures cover it so.
    private static HookRequest Of(HttpContext context, ReadOnlyMemory<byte> body)
    {
        var target = context.Features.GetRequiredFeature<IHttpRequestFeature>().RawTarget.Split('?', 2);
        return new HookRequest(
            context.Request.Method, target[0], target.Length > 1 ? target[1] : "", context.Request.Headers, body);
    }
}
