using System.Net;

namespace HeapText.Carriers;

/// <summary>What the settings say of any line, already checked.</summary>
public abstract record LineOptions
{
    /// <summary>Name of the line, as it stands in the hooks' addresses.</summary>
    public required string Name { get; init; }

    /// <summary>The number or short code farmers see as the sender.</summary>
    public required string From { get; init; }

    /// <summary>Two-letter country (ISO 3166-1) whose national numbers are understood; null for international
    /// only.</summary>
    public string? Region { get; init; }

    /// <summary>Two-letter countries (ISO 3166-1) whose numbers the line takes; empty for all.</summary>
    public IReadOnlySet<string> Countries { get; init; } = new HashSet<string>();

    /// <summary>Networks its hooks may be posted from; empty for all.</summary>
    public IReadOnlyList<IPNetwork> AllowedFrom { get; init; } = [];

    /// <summary>The most it may send, whichever instance sends. [segments a second]</summary>
    public double SegmentsPerSecond { get; init; } = 10;

    /// <summary>The most it may send in a day; null for no cap. [segments]</summary>
    public long? SegmentsPerDay { get; init; }

    /// <summary>Name of the line that sends for it while it fails; null for none.</summary>
    public string? Backup { get; init; }
}
