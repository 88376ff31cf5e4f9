using Microsoft.AspNetCore.Http.HttpResults;

namespace HeapText.Service.Hooks;

/// <summary>Problem details (RFC 9457) of the hooks: what is wrong and what to send instead.</summary>
internal static class Faults
{
    private const string RetryAfterSeconds = "5";
    private const string NotTakenDetail =
        "The service failed and nothing was promised. Send it again with the same id.";
    private static readonly string[] Hooks = ["/sms", "/ussd", "/receipts", "/calls"];
    private const string NotJsonDetail = "Content-Type: send application/json.";

    public static ProblemHttpResult BadBody(string detail) => Problem(400, "The message cannot be read", detail);

    public static ProblemHttpResult NotGenuine(string fix) => Problem(401, "The message is not genuine", fix);

    public static ProblemHttpResult FromPage() => Problem(
        403, "The message comes from a web page", "Origin, Sec-Fetch-Site: leave them out, as gateways do.");

    public static ProblemHttpResult NoSuchHook(string line, HookKind hook) => Problem(
        404, "The line has no such hook", $"line: map it in Lines:{line}:{hook}, or post to another line.");

    public static ProblemHttpResult WrongMethod(HttpContext context, IReadOnlyList<string> methods)
    {
        context.Response.Headers.Allow = string.Join(", ", methods);
        return Problem(405, "Method Not Allowed", MethodDetail(context));
    }

    public static ProblemHttpResult WrongPlace() => Problem(
        403, "The message comes from the wrong place",
        "address: post from one of the line's AllowedFrom networks, or name your proxy in Proxies.");

    public static ProblemHttpResult UnknownLine(IEnumerable<string> known) => Problem(
        404, "No such line", $"line: post to one of the configured lines: {string.Join(", ", known)}.");

    public static ProblemHttpResult TooLarge(int most) => Problem(
        413, "The body is too large", $"body: send at most {most} bytes.");

    public static ProblemHttpResult NotJson() => Problem(
        415, "The body is not JSON", NotJsonDetail);

    public static ProblemHttpResult Failed() => Problem(500, "The service failed", NotTakenDetail);

    public static ProblemHttpResult Busy(HttpContext context)
    {
        context.Response.Headers.RetryAfter = RetryAfterSeconds;
        return Problem(503, "The message was not taken",
            $"The store cannot take it now. Send it again with the same id after {RetryAfterSeconds} seconds.");
    }

    public static ProblemHttpResult BadRequest(string detail) => Problem(400, "The request cannot be read", detail);

    /// <summary>Answers of a route that nothing is posted to again under an id.</summary>
    public static ProblemHttpResult StoreGone(HttpContext context)
    {
        context.Response.Headers.RetryAfter = RetryAfterSeconds;
        return Problem(503, "The store does not answer",
            "The store cannot be read or written now, and a clock being moved stands where it came to. "
            + $"Try again after {RetryAfterSeconds} seconds.");
    }

    /// <summary>Gives what the framework itself answers a detail as well.</summary>
    public static void Explain(ProblemDetailsContext context)
    {
        context.ProblemDetails.Extensions.Remove("traceId");
        context.ProblemDetails.Detail ??= context.ProblemDetails.Status switch
        {
            404 => "path: there is nothing at this address; /openapi/v1.json lists what there is.",
            405 => MethodDetail(context.HttpContext),
            415 => NotJsonDetail,
            500 when Hooks.Any(hook => context.HttpContext.Request.Path.StartsWithSegments(hook)) => NotTakenDetail,
            500 => "The service failed; its log tells why.",
            _ => null,
        };
    }

    private static string MethodDetail(HttpContext context) =>
        $"method: use {context.Response.Headers.Allow} at this address.";

    private static ProblemHttpResult Problem(int status, string title, string detail) =>
        TypedResults.Problem(detail, statusCode: status, title: title);
}
