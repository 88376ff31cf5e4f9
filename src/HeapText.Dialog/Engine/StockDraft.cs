using System.Runtime.Serialization;
using HeapText.Agronomy.Materials;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Stock while it is being taken: what was named, what is still to be asked, what is lacking.</summary>
/// <remarks>The order numbers are the stored format: never reuse or change one; add new ones at the end.</remarks>
[DataContract]
public sealed record StockDraft
{
    /// <summary>What was named, in the farmer's order.</summary>
    [DataMember(Order = 0)] public IReadOnlyList<DraftItem> Items { get; init; } = [];

    /// <summary>Materials named that never go in, not yet answered.</summary>
    [DataMember(Order = 1)] public IReadOnlyList<string> Refused { get; init; } = [];

    /// <summary>Step of the numbered path, from 0; null when the farmer texts freely.</summary>
    [DataMember(Order = 2)] public int? MenuStep { get; init; }

    /// <summary>What to bring before a heap can be built.</summary>
    [DataMember(Order = 3)] public IReadOnlyList<Portion> Missing { get; init; } = [];

    /// <summary>Others of the same role as the first thing to bring.</summary>
    [DataMember(Order = 4)] public IReadOnlyList<string> Substitutes { get; init; } = [];

    /// <summary>The day to ask again; null when that was done.</summary>
    [DataMember(Order = 5)] public LocalDate? NudgeOn { get; init; }

    /// <summary>True when what is there makes at least a small heap in a basket or ring.</summary>
    [DataMember(Order = 6)] public bool MakesSmallHeap { get; init; }

    /// <summary>What was named by a word for several materials, to be asked which.</summary>
    [DataMember(Order = 7)] public IReadOnlyList<UnsureItem> Unsure { get; init; } = [];

    /// <summary>True when materials are picked by what they do in a heap, in any order, until the farmer says that
    /// this is all.</summary>
    [DataMember(Order = 8)] public bool ByRole { get; init; }

    /// <summary>The role whose materials are offered; null when it is asked which.</summary>
    [DataMember(Order = 9)] public MaterialRole? Role { get; init; }

    /// <summary>The first item whose amount is not known; null when all are.</summary>
    public DraftItem? WithoutAmount => Items.FirstOrDefault(item => item.Amount is null);
}

/// <summary>One material named.</summary>
[DataContract]
public sealed record DraftItem(
    [property: DataMember(Order = 0)] string Material,
    [property: DataMember(Order = 1)] decimal? Amount,
    [property: DataMember(Order = 2)] string? Measure);

/// <summary>Something named by a word for several materials.</summary>
/// <param name="Word">How it was written.</param>
/// <param name="Choices">Keys of the materials it may be.</param>
/// <param name="Amount">As told; null when not said.</param>
/// <param name="Measure">As told; null when not said.</param>
/// <param name="InAddition">True when it comes on top of what was told before.</param>
[DataContract]
public sealed record UnsureItem(
    [property: DataMember(Order = 0)] string Word,
    [property: DataMember(Order = 1)] IReadOnlyList<string> Choices,
    [property: DataMember(Order = 2)] decimal? Amount,
    [property: DataMember(Order = 3)] string? Measure,
    [property: DataMember(Order = 4)] bool InAddition);
