using System.Net.Http.Headers;
using System.Text;
using NodaTime;

namespace HeapText.Carriers.Mapped;

/// <summary>Shows the gateway who we are.</summary>
internal static class AuthWriter
{
    /// <summary>Adds the proof to a request that is otherwise complete; a key of the query already stands in its
    /// address.</summary>
    public static void Prove(LineAuth auth, HttpRequestMessage request, Instant now)
    {
        switch (auth)
        {
            case LineAuth.Basic basic:
                var both = Encoding.UTF8.GetBytes($"{basic.User}:{basic.Passwords[0].Reveal()}");
                request.Headers.Authorization = new AuthenticationHeaderValue("Basic", Convert.ToBase64String(both));
                break;
            case LineAuth.Bearer bearer:
                request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", bearer.Tokens[0].Reveal());
                break;
            case LineAuth.HeaderKey key:
                request.Headers.TryAddWithoutValidation(key.Header, key.Keys[0].Reveal());
                break;
            case LineAuth.Hmac hmac:
                Sign(hmac.Scheme, request, now);
                break;
        }
    }

    private static void Sign(HmacScheme scheme, HttpRequestMessage request, Instant now)
    {
        var stamp = scheme.Stamp(now);
        if (scheme.TimestampHeader is { } header) request.Headers.TryAddWithoutValidation(header, stamp);
        request.Headers.TryAddWithoutValidation(scheme.Header, scheme.Sign(name => PartOf(request, name, stamp)));
    }

    private static byte[] PartOf(HttpRequestMessage request, string name, string stamp) => name switch
    {
        "body" => Body(request),
        "method" => Encoding.UTF8.GetBytes(request.Method.Method),
        "path" => Encoding.UTF8.GetBytes(request.RequestUri!.AbsolutePath),
        "query" => Encoding.UTF8.GetBytes(request.RequestUri!.Query.TrimStart('?')),
        "timestamp" => Encoding.UTF8.GetBytes(stamp),
        _ => Encoding.UTF8.GetBytes(Header(request, name["header:".Length..])),
    };

    // The content is a byte array, so this neither waits nor fails.
    private static byte[] Body(HttpRequestMessage request)
    {
        using var bytes = new MemoryStream();
        request.Content?.CopyTo(bytes, null, CancellationToken.None);
        return bytes.ToArray();
    }

    private static string Header(HttpRequestMessage request, string name) =>
        request.Headers.TryGetValues(name, out var values) ? string.Join(',', values) : "";
}
