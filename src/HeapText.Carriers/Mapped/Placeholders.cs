namespace HeapText.Carriers.Mapped;

/// <summary>The names templates may hold.</summary>
public static class Placeholders
{
    /// <summary>Those that are always whole numbers, and so may stand without quotes.</summary>
    internal static readonly IReadOnlySet<string> Numbers = new HashSet<string>
    {
        "segments", "expires-unix", "validity-seconds", "validity-minutes", "step", "count",
    };

    /// <summary>Of a message to send.</summary>
    public static readonly IReadOnlyList<string> Sending =
    [
        "id", "from", "to", "to-digits", "to-national", "text", "encoding", "segments",
        "expires", "expires-unix", "validity-seconds", "validity-minutes",
    ];

    /// <summary>Of a message to send, where no text may stand: in headers and paths, which have no escape that every
    /// gateway undoes.</summary>
    public static readonly IReadOnlyList<string> SendingPlain = [.. Sending.Where(name => name != "text")];
}
