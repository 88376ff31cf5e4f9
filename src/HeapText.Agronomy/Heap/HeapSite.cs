namespace HeapText.Agronomy.Heap;

/// <summary>What decides how a heap is best made; null where it is not known.</summary>
/// <param name="Rain">Rain in the weeks to come.</param>
/// <param name="Water">Way to the water.</param>
/// <param name="Labour">How often someone can turn.</param>
/// <param name="Litres">What there is to heap, as piled. [L]</param>
public sealed record HeapSite(Rain? Rain = null, Water? Water = null, Labour? Labour = null, double? Litres = null);

/// <summary>Rain in the weeks to come.</summary>
public enum Rain
{
    /// <summary>Dry season: none to speak of.</summary>
    Dry,

    /// <summary>A shower now and then.</summary>
    Some,

    /// <summary>Heavy rains: an open pit would stand full.</summary>
    Heavy,
}

/// <summary>Way to the water that a heap needs.</summary>
public enum Water
{
    /// <summary>Near enough to water at every turning.</summary>
    Near,

    /// <summary>Every bucket is a walk.</summary>
    Far,
}

/// <summary>How often someone can turn.</summary>
public enum Labour
{
    /// <summary>Every few days.</summary>
    Often,

    /// <summary>About once a week.</summary>
    Sometimes,

    /// <summary>Once a month at most.</summary>
    Little,
}
