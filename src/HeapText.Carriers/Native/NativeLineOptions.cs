using HeapText.Carriers.Signing;

namespace HeapText.Carriers.Native;

/// <summary>Settings of one native line, already checked.</summary>
public sealed record NativeLineOptions
{
    /// <summary>Name of the line, as it stands in the hook's address.</summary>
    public required string Name { get; init; }

    /// <summary>Where messages are posted.</summary>
    public required Uri Url { get; init; }

    /// <summary>One or two live keys; each message out is signed with all of them.</summary>
    public required IReadOnlyList<WebhookKey> Keys { get; init; }

    /// <summary>The number or short code farmers see as the sender.</summary>
    public required string From { get; init; }

    /// <summary>Two-letter country (ISO 3166-1) whose national numbers are understood; null for international
    /// only.</summary>
    public string? Region { get; init; }

    /// <summary>How long one post may take before its outcome counts as unknown. 1 s to 25 s; default 10 s.</summary>
    public TimeSpan Timeout { get; init; } = TimeSpan.FromSeconds(10);
}
