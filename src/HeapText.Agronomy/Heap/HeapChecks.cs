namespace HeapText.Agronomy.Heap;

/// <summary>Heat of a heap, felt on a rod left in its middle. Bands of touch, not degrees.</summary>
public enum Heat
{
    /// <summary>The rod or hand cannot be held there.</summary>
    Hot,

    /// <summary>Clearly warmer than the air, can be held.</summary>
    Warm,

    /// <summary>Hardly warmer than the air.</summary>
    Cool,

    /// <summary>As the air, or colder.</summary>
    Cold,
}

/// <summary>Smell of a heap as it is opened.</summary>
public enum Smell
{
    /// <summary>Like good soil.</summary>
    Earthy,

    /// <summary>Like urine: ammonia.</summary>
    Ammonia,

    /// <summary>Like rotten eggs or dung water: no air.</summary>
    Rotten,

    /// <summary>Like vinegar.</summary>
    Sour,

    /// <summary>No smell.</summary>
    None,
}

/// <summary>Moisture of a squeezed handful.</summary>
public enum Moisture
{
    /// <summary>Water runs out.</summary>
    Dripping,

    /// <summary>The hand gets wet, more than two drops.</summary>
    Wet,

    /// <summary>A drop or two.</summary>
    Good,

    /// <summary>No drop; it falls apart.</summary>
    Dry,
}

/// <summary>Animals seen in a heap.</summary>
public enum Pests
{
    /// <summary>Flies or maggots.</summary>
    Flies,

    /// <summary>Rats or mice.</summary>
    Rats,

    /// <summary>Ants or termites.</summary>
    AntsTermites,

    /// <summary>None.</summary>
    None,
}
