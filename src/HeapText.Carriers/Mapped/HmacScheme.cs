using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HeapText.Carriers.Signing;
using NodaTime;

namespace HeapText.Carriers.Mapped;

/// <summary>A keyed hash over chosen parts of a request.</summary>
/// <remarks>Source: RFC 2104, with SHA-256 or SHA-512 (FIPS 180-4).</remarks>
public sealed record HmacScheme
{
    /// <summary>The parts it may cover, beside {header:NAME}.</summary>
    public static readonly IReadOnlyList<string> Parts = ["method", "path", "query", "timestamp", "body"];

    /// <summary>The live keys; the first one signs.</summary>
    public required IReadOnlyList<byte[]> Keys { get; init; }

    /// <summary>SHA-512 rather than SHA-256.</summary>
    public bool IsLong { get; init; }

    /// <summary>What is hashed.</summary>
    public required Template Over { get; init; }

    /// <summary>The header that holds the hash.</summary>
    public required string Header { get; init; }

    /// <summary>What stands before the hash in its header.</summary>
    public string Prefix { get; init; } = "";

    /// <summary>Base64 rather than hexadecimal.</summary>
    public bool IsBase64 { get; init; }

    /// <summary>The header that holds the time of sending; null for none, and then whoever saw a request can send it
    /// again.</summary>
    public string? TimestampHeader { get; init; }

    /// <summary>Milliseconds rather than seconds since 1970-01-01T00:00Z.</summary>
    public bool IsInMilliseconds { get; init; }

    /// <summary>What the header of the hash holds.</summary>
    internal string Sign(Func<string, ReadOnlyMemory<byte>> part)
    {
        var hash = Hash(Keys[0], Over.FillBytes(part));
        return Prefix + (IsBase64 ? Convert.ToBase64String(hash) : Convert.ToHexStringLower(hash));
    }

    /// <summary>What the header of the time holds.</summary>
    internal string Stamp(Instant now) =>
        (IsInMilliseconds ? now.ToUnixTimeMilliseconds() : now.ToUnixTimeSeconds())
            .ToString(CultureInfo.InvariantCulture);

    /// <summary>True when a request was signed with one of the keys, of late.</summary>
    /// <remarks>Compares with every key in fixed time; never tells which part was wrong.</remarks>
    internal bool IsGenuine(HookRequest request, Instant now)
    {
        var stamp = TimestampHeader is null ? "" : Single(request, TimestampHeader);
        var covered = Over.FillBytes(name => PartOf(request, name, stamp));
        var given = Decode(Single(request, Header));
        var genuine = false;
        foreach (var key in Keys)
        {
            var expected = Hash(key, covered);
            genuine |= CryptographicOperations.FixedTimeEquals(given, expected);
        }

        return genuine & (TimestampHeader is null || IsFresh(stamp, now));
    }

    private static ReadOnlyMemory<byte> PartOf(HookRequest request, string name, string stamp) => name switch
    {
        "body" => request.Body,
        "method" => Encoding.UTF8.GetBytes(request.Method),
        "path" => Encoding.UTF8.GetBytes(request.Path),
        "query" => Encoding.UTF8.GetBytes(request.Query),
        "timestamp" => Encoding.UTF8.GetBytes(stamp),
        _ => Encoding.UTF8.GetBytes(Single(request, name["header:".Length..])),
    };

    private static string Single(HookRequest request, string header) =>
        request.Headers[header] is [{ } value] ? value : "";

    // A hash of the wrong length never matches, whatever it holds.
    private byte[] Decode(string written)
    {
        if (!written.StartsWith(Prefix, StringComparison.Ordinal)) return [];
        var given = new byte[SHA512.HashSizeInBytes];
        var text = written[Prefix.Length..];
        var length = 0;
        var readable = IsBase64
            ? Convert.TryFromBase64String(text, given, out length)
            : text.Length <= given.Length * 2
                && Convert.FromHexString(text, given, out _, out length) == System.Buffers.OperationStatus.Done;
        return readable ? given[..length] : [];
    }

    private byte[] Hash(byte[] key, byte[] covered) =>
        IsLong ? HMACSHA512.HashData(key, covered) : HMACSHA256.HashData(key, covered);

    private bool IsFresh(string stamp, Instant now)
    {
        if (!long.TryParse(stamp, NumberStyles.None, CultureInfo.InvariantCulture, out var sent)) return false;
        var seconds = IsInMilliseconds ? sent / 1000 : sent;
        var clock = now.ToUnixTimeSeconds();
        return seconds >= clock - (long)WebhookSignature.Oldest.TotalSeconds
            && seconds <= clock + (long)WebhookSignature.FurthestAhead.TotalSeconds;
    }
}
