using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace HeapText.Carriers.Signing;

/// <summary>One signing secret of the Standard Webhooks specification: "whsec_" and 24 to 64 bytes in base64.</summary>
/// <remarks>Source: Standard Webhooks specification, "Signature scheme" (symmetric, HMAC-SHA-256).</remarks>
public sealed class WebhookKey
{
    /// <summary>What every secret begins with.</summary>
    public const string Prefix = "whsec_";

    private const int FewestBytes = 24;
    private const int MostBytes = 64;
    private readonly byte[] _secret;

    private WebhookKey(byte[] secret) => _secret = secret;

    /// <summary>Reads a secret; false when it has not the stated form.</summary>
    public static bool TryParse(string? text, out WebhookKey key)
    {
        key = null!;
        if (text is null || !text.StartsWith(Prefix, StringComparison.Ordinal)) return false;
        var secret = new byte[text.Length];
        if (!Convert.TryFromBase64String(text[Prefix.Length..], secret, out var length)) return false;
        if (length is < FewestBytes or > MostBytes) return false;
        key = new WebhookKey(secret[..length]);
        return true;
    }

    /// <summary>HMAC-SHA-256 over "id.timestamp.body". [32 bytes]</summary>
    /// <param name="id">The webhook-id.</param>
    /// <param name="timestamp">The webhook-timestamp, seconds since 1970-01-01T00:00Z.</param>
    /// <param name="body">The body, byte for byte.</param>
    internal byte[] Sign(string id, long timestamp, ReadOnlySpan<byte> body)
    {
        var head = Encoding.UTF8.GetBytes($"{id}.{timestamp.ToString(CultureInfo.InvariantCulture)}.");
        var signed = new byte[head.Length + body.Length];
        head.CopyTo(signed, 0);
        body.CopyTo(signed.AsSpan(head.Length));
        return HMACSHA256.HashData(_secret, signed);
    }
}
