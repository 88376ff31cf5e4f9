namespace HeapText.Agronomy.Heap;

/// <summary>What holds a heap together.</summary>
public enum HeapForm
{
    /// <summary>It stands free, straight-sided.</summary>
    Open,

    /// <summary>It lies in a pit; its height is the pit's depth.</summary>
    Pit,

    /// <summary>It stands in a round basket, or a ring of sticks or wire; width and length are its diameter.</summary>
    Ring,
}

/// <summary>How big a heap may be.</summary>
/// <param name="Form">What holds it together.</param>
/// <param name="NarrowestM">Least width. [m]</param>
/// <param name="WidestM">Most width. [m]</param>
/// <param name="LongestM">Most length. [m]</param>
/// <param name="HighestM">Most height, or depth of a pit. [m]</param>
/// <param name="LeastLitres">Least volume as piled. [L]</param>
public sealed record HeapBounds(
    HeapForm Form, double NarrowestM, double WidestM, double LongestM, double HighestM, double LeastLitres)
{
    /// <summary>Part of the rectangle of width and length that the heap covers. [m2/m2] π/4 for a ring.</summary>
    public double Cover => Form == HeapForm.Ring ? Math.PI / 4 : 1;
}
