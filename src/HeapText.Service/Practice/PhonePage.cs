using System.Reflection;

namespace HeapText.Service.Practice;

/// <summary>The phone in the browser: one page, its style and its scripts, all from this program.</summary>
internal static class PhonePage
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src data:; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Maps the page; called in practice mode only.</summary>
    public static void MapPhone(this IEndpointRouteBuilder routes)
    {
        Map(routes, "/phone", "phone.html", "text/html; charset=utf-8");
        Map(routes, "/phone/phone.css", "phone.css", "text/css; charset=utf-8");
        Map(routes, "/phone/phone.js", "phone.js", "text/javascript; charset=utf-8");
        Map(routes, "/phone/dial.js", "dial.js", "text/javascript; charset=utf-8");
    }

    private static void Map(IEndpointRouteBuilder routes, string route, string file, string type)
    {
        var content = Load(file);
        routes.MapGet(route, (HttpResponse response) =>
        {
            response.Headers.ContentSecurityPolicy = Policy;
            response.Headers.XContentTypeOptions = "nosniff";
            response.Headers["Referrer-Policy"] = "no-referrer";
            response.Headers.CacheControl = "no-cache";
            return TypedResults.Bytes(content, type);
        }).ExcludeFromDescription();
    }

    private static byte[] Load(string file)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(file)
            ?? throw new InvalidDataException($"{file} is not part of the program.");
        using var content = new MemoryStream();
        stream.CopyTo(content);
        return content.ToArray();
    }
}
