namespace HeapText.Agronomy.Heap;

/// <summary>The one list of reasons for a method; their words live with the dialogs.</summary>
public static class MethodReasons
{
    /// <summary>It is dry, and a pit keeps water in.</summary>
    public const string DrySeason = "dry-season";

    /// <summary>Water is far, and a pit needs less.</summary>
    public const string WaterFar = "water-far";

    /// <summary>Water is near, so a heap turned often can be kept wet.</summary>
    public const string WaterNear = "water-near";

    /// <summary>Someone can turn every few days.</summary>
    public const string OftenLabour = "often-labour";

    /// <summary>Nobody can turn more than once a month.</summary>
    public const string LittleLabour = "little-labour";

    /// <summary>Rains are heavy: build on the ground, never in a pit, and cover it.</summary>
    public const string HeavyRain = "heavy-rain";

    /// <summary>Less than a cubic metre heats only where sides hold it together.</summary>
    public const string LittleMaterial = "little-material";

    /// <summary>Too little even for a ring: gather more first.</summary>
    public const string GatherMore = "gather-more";

    /// <summary>Nothing known speaks for another method.</summary>
    public const string Usual = "usual";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        DrySeason, WaterFar, WaterNear, OftenLabour, LittleLabour, HeavyRain, LittleMaterial, GatherMore, Usual,
    ];
}
