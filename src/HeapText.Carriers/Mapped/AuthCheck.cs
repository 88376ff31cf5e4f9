using System.Net.Http.Headers;
using System.Text;
using Microsoft.AspNetCore.WebUtilities;
using NodaTime;

namespace HeapText.Carriers.Mapped;

/// <summary>Tells whether a request comes from the gateway.</summary>
public static class AuthCheck
{
    /// <summary>True when it does; a line without proof is left to its allow list.</summary>
    /// <remarks>Secrets are compared in fixed time with every live one.</remarks>
    public static bool IsGenuine(LineAuth auth, HookRequest request, Instant now)
    {
        ArgumentNullException.ThrowIfNull(request);
        return auth switch
        {
            LineAuth.None => true,
            LineAuth.Basic basic => IsBasic(basic, Authorization(request, "Basic")),
            LineAuth.Bearer bearer => Matches(bearer.Tokens, Authorization(request, "Bearer")),
            LineAuth.HeaderKey key => Matches(key.Keys, request.Headers[key.Header] is [{ } given] ? given : ""),
            LineAuth.QueryKey key => Matches(key.Keys, Parameter(request, key.Parameter)),
            LineAuth.Hmac hmac => hmac.Scheme.IsGenuine(request, now),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static bool IsBasic(LineAuth.Basic basic, string given)
    {
        var bytes = new byte[given.Length];
        if (!Convert.TryFromBase64String(given, bytes, out var length)) length = 0;
        var parts = Encoding.UTF8.GetString(bytes, 0, length).Split(':', 2);
        return new LineSecret(basic.User).Matches(parts[0])
            & Matches(basic.Passwords, parts.Length == 2 ? parts[1] : "");
    }

    private static bool Matches(IReadOnlyList<LineSecret> secrets, string given)
    {
        var matches = false;
        foreach (var secret in secrets) matches |= secret.Matches(given);
        return matches;
    }

    private static string Authorization(HookRequest request, string scheme) =>
        request.Headers.Authorization is [{ } written] && AuthenticationHeaderValue.TryParse(written, out var value)
            && value.Scheme.Equals(scheme, StringComparison.OrdinalIgnoreCase)
                ? value.Parameter ?? ""
                : "";

    private static string Parameter(HookRequest request, string name) =>
        QueryHelpers.ParseQuery(request.Query).TryGetValue(name, out var values) && values is [{ } given] ? given : "";
}
