using HeapText.Carriers.Signing;

namespace HeapText.Carriers.Native;

/// <summary>Settings of one native line, already checked.</summary>
public sealed record NativeLineOptions : LineOptions
{
    /// <summary>Where messages are posted.</summary>
    public required Uri Url { get; init; }

    /// <summary>One or two live keys; each message out is signed with all of them.</summary>
    public required IReadOnlyList<WebhookKey> Keys { get; init; }

    /// <summary>How long one post may take before its outcome counts as unknown. 1 s to 25 s; default 10 s.</summary>
    public TimeSpan Timeout { get; init; } = TimeSpan.FromSeconds(10);
}
