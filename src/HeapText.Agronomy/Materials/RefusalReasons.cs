namespace HeapText.Agronomy.Materials;

/// <summary>The one list of reasons why a material never goes into a heap.</summary>
public static class RefusalReasons
{
    /// <summary>It never rots, and its pieces stay in the field for good.</summary>
    public const string DoesNotRot = "does-not-rot";

    /// <summary>It never rots, and it cuts the hands and feet of whoever turns the heap or works the field.</summary>
    public const string Sharp = "sharp";

    /// <summary>It holds poison that stays in the compost, the soil and the food.</summary>
    public const string Poison = "poison";

    /// <summary>It carries germs and worms that make people ill and that a heap may not kill.</summary>
    public const string Germs = "germs";

    /// <summary>It draws dogs, rats and flies, stinks, and may carry a disease of animals.</summary>
    public const string Carrion = "carrion";

    /// <summary>It may hold a weed killer that outlives composting and cripples the next crop.</summary>
    public const string Spray = "spray";

    /// <summary>It carries a disease of the crop, which lives on in the cooler outside of a heap.</summary>
    public const string Disease = "disease";

    /// <summary>Its seed lives on in the cooler outside of a heap and is sown with the compost.</summary>
    public const string WeedSeed = "weed-seed";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
        [DoesNotRot, Sharp, Poison, Germs, Carrion, Spray, Disease, WeedSeed];
}
