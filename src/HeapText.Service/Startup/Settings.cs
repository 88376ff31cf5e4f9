using HeapText.Carriers.Native;

namespace HeapText.Service.Startup;

/// <summary>What the service runs with, already checked.</summary>
internal sealed record Settings
{
    /// <summary>Addresses to listen on.</summary>
    public required IReadOnlyList<string> Urls { get; init; }

    /// <summary>Folder of the embedded store and of practice records.</summary>
    public required string Folder { get; init; }

    /// <summary>StackExchange.Redis connection string; empty for the embedded store.</summary>
    public string StoreConnection { get; init; } = "";

    /// <summary>Key that seals and looks up numbers. [at least 32 bytes]</summary>
    public required ReadOnlyMemory<byte> NumberSecret { get; init; }

    /// <summary>Lines to gateways; none means practice mode.</summary>
    public IReadOnlyList<NativeLineOptions> Lines { get; init; } = [];

    /// <summary>Start practice mode with an empty store and no demo village.</summary>
    public bool Fresh { get; init; }

    /// <summary>True when no line to a gateway is configured: phones are simulated, and reachable from here only.</summary>
    public bool IsPractice => Lines.Count == 0;
}
