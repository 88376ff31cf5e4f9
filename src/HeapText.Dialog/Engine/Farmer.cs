using System.Runtime.Serialization;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Everything known of one phone: who, where the talk stands, and its heaps. Stored as one packed record.</summary>
/// <remarks>The order numbers are the stored format: never reuse or change one; add new ones at the end.</remarks>
[DataContract]
public sealed record Farmer
{
    /// <summary>Random id that stands for the farmer outside the store.</summary>
    [DataMember(Order = 0)] public required string Subject { get; init; }

    /// <summary>Something for a person to look at; null when nothing is open.</summary>
    [DataMember(Order = 1)] public Concern? Concern { get; init; }

    /// <summary>Code of the joined group; null before joining.</summary>
    [DataMember(Order = 2)] public int? Group { get; init; }
}

/// <summary>Why a farmer waits for a person.</summary>
[DataContract]
public sealed record Concern
{
    /// <summary>Short key of the reason.</summary>
    [DataMember(Order = 0)] public required string Reason { get; init; }

    /// <summary>Since when.</summary>
    [DataMember(Order = 1)] public required Instant Since { get; init; }
}
