using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Use;

namespace HeapText.Dialog.Engine;

/// <summary>What the office has set for its district.</summary>
public sealed record Office
{
    /// <summary>How heaps are built and turned, by key; must hold the key of every heap on record.</summary>
    public IReadOnlyDictionary<string, HeapMethod> Methods { get; init; } = HeapMethods.All;

    /// <summary>What measures hold and materials are like here.</summary>
    public DistrictFigures District { get; init; } = DistrictFigures.None;

    /// <summary>What fertiliser costs here.</summary>
    public LocalPrices Prices { get; init; } = LocalPrices.None;
}
