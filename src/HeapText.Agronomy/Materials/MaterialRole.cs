namespace HeapText.Agronomy.Materials;

/// <summary>What a material does in a heap, in building order.</summary>
public enum MaterialRole
{
    /// <summary>Dry and rich in carbon.</summary>
    Brown,

    /// <summary>Moist and rich in nitrogen.</summary>
    Green,

    /// <summary>Dung, litter, slurry and urine.</summary>
    Manure,

    /// <summary>Soil or old compost: brings microbes and binds.</summary>
    Earth,

    /// <summary>Ash, lime, rock and bone.</summary>
    Mineral,

    /// <summary>Carbon that microbes cannot eat.</summary>
    Charcoal,

    /// <summary>Quick energy for microbes.</summary>
    Feed,

    /// <summary>Never goes in.</summary>
    Refused,
}
