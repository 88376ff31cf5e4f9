using System.Globalization;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Use;

namespace HeapText.Dialog.Engine;

/// <summary>What the office has set for its district.</summary>
public sealed record Office
{
    /// <summary>Air temperature where nothing else is set. [degrees C] Chosen: warm country.</summary>
    public const double UsualAmbientC = 25;

    /// <summary>How heaps are built and turned, by key; holds the methods that come with the product.</summary>
    public IReadOnlyDictionary<string, HeapMethod> Methods { get; init; } = HeapMethods.All;

    /// <summary>Key of the method of a group, by its code, where it is not the usual one.</summary>
    public IReadOnlyDictionary<int, string> GroupMethods { get; init; } = new Dictionary<int, string>();

    /// <summary>District of a group, by its code, where it is not a district of its own.</summary>
    public IReadOnlyDictionary<int, string> GroupDistricts { get; init; } = new Dictionary<int, string>();

    /// <summary>What measures hold and materials are like here.</summary>
    public DistrictFigures District { get; init; } = DistrictFigures.None;

    /// <summary>Air temperature of the season. [degrees C, -10 to 45]</summary>
    public double AmbientC { get; init; } = UsualAmbientC;

    /// <summary>Languages that may be spoken although no native-speaking agronomist has read their texts, beside the
    /// language of each group in that group; null for all.</summary>
    public IReadOnlySet<string>? Languages { get; init; }

    /// <summary>What fertiliser costs here.</summary>
    public LocalPrices Prices { get; init; } = LocalPrices.None;

    /// <summary>The method of a key on record; the usual one when the office has given that one up since.</summary>
    public HeapMethod MethodOf(string key) => Methods.GetValueOrDefault(key) ?? Methods[HeapMethods.UsualKey];

    /// <summary>Key of the method for new heaps of a group.</summary>
    public string MethodOfGroup(int? code) => GroupMethods.GetValueOrDefault(code ?? 0, HeapMethods.UsualKey);

    /// <summary>The district whose own words a group uses: the one set for it, else the group itself, by its
    /// code.</summary>
    public string DistrictOf(int code) =>
        GroupDistricts.GetValueOrDefault(code) ?? code.ToString(CultureInfo.InvariantCulture);
}
