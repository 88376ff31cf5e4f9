using System.Net.Mime;
using Microsoft.Net.Http.Headers;

namespace HeapText.Service.Hooks;

/// <summary>The raw body of a hook, byte for byte, because the signature covers the bytes.</summary>
internal static class HookBody
{
    /// <summary>The largest body taken. [bytes]</summary>
    public const int MostBytes = 64 * 1024;

    /// <summary>Reads the body; null when it is larger than <see cref="MostBytes"/>.</summary>
    public static async Task<ReadOnlyMemory<byte>?> Read(HttpRequest request, CancellationToken cancel)
    {
        if (request.ContentLength > MostBytes) return null;
        var buffer = new byte[(request.ContentLength ?? MostBytes) + 1];
        var length = 0;
        while (true)
        {
            var read = await request.Body.ReadAsync(buffer.AsMemory(length), cancel);
            if (read == 0) return buffer.AsMemory(0, length);
            length += read;
            if (length == buffer.Length) return null;
        }
    }

    /// <summary>Whether the body may be read as JSON: it is said to be, or, as from a command line that says nothing of
    /// its type, it is not said to be anything else. A page of another site cannot send either without its
    /// origin.</summary>
    public static bool IsJson(IHeaderDictionary headers)
    {
        if (!MediaTypeHeaderValue.TryParse(headers.ContentType.ToString(), out var type)) return IsFromNoPage(headers);
        if (type.MediaType.Equals(MediaTypeNames.Application.FormUrlEncoded, StringComparison.OrdinalIgnoreCase))
            return IsFromNoPage(headers);
        return (type.MediaType.Equals(MediaTypeNames.Application.Json, StringComparison.OrdinalIgnoreCase)
                || type.Suffix.Equals("json", StringComparison.OrdinalIgnoreCase))
            && (!type.Charset.HasValue
                || HeaderUtilities.RemoveQuotes(type.Charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase));
    }

    private static bool IsFromNoPage(IHeaderDictionary headers) => !headers.ContainsKey(HeaderNames.Origin);
}
