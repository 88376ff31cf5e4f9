namespace HeapText.Agronomy.Materials;

/// <summary>How a material lies in a heap.</summary>
public enum MaterialForm
{
    /// <summary>Fills space and packs.</summary>
    Fine,

    /// <summary>Stiff stalks or chips that let air in: the base of a heap. Common practice, no source.</summary>
    Coarse,

    /// <summary>Soaks into what is there and fills no space of its own.</summary>
    Liquid,
}
