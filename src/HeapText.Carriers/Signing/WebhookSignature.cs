using System.Globalization;
using System.Security.Cryptography;
using NodaTime;

namespace HeapText.Carriers.Signing;

/// <summary>Signs and checks messages per the Standard Webhooks specification.</summary>
public static class WebhookSignature
{
    /// <summary>Header that names the message.</summary>
    public const string IdHeader = "webhook-id";

    /// <summary>Header that tells when it was sent, in seconds since 1970-01-01T00:00Z.</summary>
    public const string TimestampHeader = "webhook-timestamp";

    /// <summary>Header with one or more signatures, parted by spaces.</summary>
    public const string SignatureHeader = "webhook-signature";

    /// <summary>How old a signed message may be.</summary>
    public static readonly Duration Oldest = Duration.FromMinutes(5);

    /// <summary>How far ahead of our clock the sender's may be.</summary>
    public static readonly Duration FurthestAhead = Duration.FromSeconds(60);

    private const string Version = "v1,";
    private const int MostSignatures = 8;

    /// <summary>The value of <see cref="SignatureHeader"/>: one signature a key, so that either key may be taken
    /// out.</summary>
    public static string Write(IReadOnlyList<WebhookKey> keys, string id, Instant at, ReadOnlySpan<byte> body)
    {
        ArgumentNullException.ThrowIfNull(keys);
        var signatures = new string[keys.Count];
        for (var i = 0; i < keys.Count; i++)
            signatures[i] = Version + Convert.ToBase64String(keys[i].Sign(id, at.ToUnixTimeSeconds(), body));
        return string.Join(' ', signatures);
    }

    /// <summary>True when one of the signatures is right for one of the keys and the message is fresh.</summary>
    /// <remarks>Compares every signature with every key in fixed time; never tells which part was wrong.</remarks>
    public static bool IsGenuine(
        IReadOnlyList<WebhookKey> keys, string? id, string? timestamp, string? signatures, ReadOnlySpan<byte> body,
        Instant now)
    {
        ArgumentNullException.ThrowIfNull(keys);
        if (string.IsNullOrEmpty(id) || string.IsNullOrEmpty(signatures)) return false;
        if (!long.TryParse(timestamp, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds)) return false;

        var genuine = false;
        foreach (var key in keys)
        {
            var expected = key.Sign(id, seconds, body);
            foreach (var written in signatures.Split(' ', MostSignatures + 1).Take(MostSignatures))
                genuine |= Matches(written, expected);
        }

        return genuine & IsFresh(seconds, now.ToUnixTimeSeconds());
    }

    private static bool Matches(string written, byte[] expected)
    {
        Span<byte> given = stackalloc byte[HMACSHA256.HashSizeInBytes];
        var readable = written.StartsWith(Version, StringComparison.Ordinal)
            && Convert.TryFromBase64String(written[Version.Length..], given, out var length)
            && length == expected.Length;
        return CryptographicOperations.FixedTimeEquals(given, expected) & readable;
    }

    private static bool IsFresh(long sent, long now) =>
        sent >= now - (long)Oldest.TotalSeconds && sent <= now + (long)FurthestAhead.TotalSeconds;
}
