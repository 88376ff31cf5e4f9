namespace HeapText.Agronomy.Use;

/// <summary>Ripeness by how far moist compost warms itself in an insulated flask (Dewar), for a trainer with a
/// thermometer.</summary>
public static class SelfHeating
{
    /// <summary>The class, from 5 (ripe) down to 1 (fresh). [DEWAR], from memory.</summary>
    /// <param name="riseC">Highest temperature less that of the room. [K]</param>
    /// <remarks>Up to 10 K class V, 20 IV, 30 III, 40 II, above that I.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Not a number.</exception>
    public static int ClassOf(double riseC) => riseC switch
    {
        <= 10 => 5,
        <= 20 => 4,
        <= 30 => 3,
        <= 40 => 2,
        > 40 => 1,
        _ => throw new ArgumentOutOfRangeException(nameof(riseC), riseC, "Must be a number."),
    };
}
