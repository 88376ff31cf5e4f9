namespace HeapText.Agronomy.Heap;

/// <summary>What is pushed into a heap to feel its heat.</summary>
public enum RodKind
{
    /// <summary>A metal rod, as of iron or steel: it burns.</summary>
    Metal,

    /// <summary>A wooden stick, dry or wet: it hides much of the heat.</summary>
    Wood,

    /// <summary>A bare hand pushed in about 30 cm.</summary>
    Hand,
}

/// <summary>Temperatures in the middle of a heap that a feeling may mean. [degrees C]</summary>
/// <param name="LowC">Not below this. [degrees C]</param>
/// <param name="HighC">Not above this. [degrees C]</param>
public readonly record struct CoreBand(double LowC, double HighC);

/// <summary>How hot a heap is inside, judged by how its rod feels.</summary>
/// <remarks>
/// <code>T = Ts + (Tb − Ts) eb / (es + eb)</code>
/// T temperature where skin and body touch, Ts skin 33, Tb body [degrees C]; es skin 1200, eb body: effusivity
/// [W s^0.5 / m2 K], dry wood 400, wet wood 800, moist compost 900, steel 12,000. Valid for the first moment of touch.
/// <para>Derived, not published: a dry stick never hurts even at 70 degrees C, and steel hurts from about 46. The bands
/// of metal are those at which a grip can be held for long, some seconds, or not; wood spans dry and wet, and with
/// the hand is about 10 degrees uncertain. Pain begins near 43 degrees at the skin [STOLL]. Lowest and highest ends are
/// chosen: air of 5 to 28, and 75 to 80, where life alone stops heating [NAYLOR].</para>
/// </remarks>
public static class RodFeel
{
    private const double SkinC = 33;
    private const double SkinEffusivity = 1200;

    /// <summary>Core temperature that a feeling may mean. [degrees C]</summary>
    /// <param name="heat">As felt.</param>
    /// <param name="rod">What was held; null when not known: the bands of all kinds together.</param>
    public static CoreBand Band(Heat heat, RodKind? rod)
    {
        if (rod is null)
        {
            var all = Enum.GetValues<RodKind>().Select(kind => Band(heat, kind)).ToList();
            return new CoreBand(all.Min(band => band.LowC), all.Max(band => band.HighC));
        }

        return (rod, heat) switch
        {
            (RodKind.Metal, Heat.Hot) => new(52, 75),
            (RodKind.Metal, Heat.Warm) => new(35, 52),
            (RodKind.Metal, Heat.Cool) => new(28, 35),
            (RodKind.Metal, _) => new(5, 28),
            (RodKind.Wood, Heat.Hot) => new(60, 80),
            (RodKind.Wood, Heat.Warm) => new(40, 70),
            (RodKind.Wood, Heat.Cool) => new(30, 45),
            (RodKind.Wood, _) => new(5, 35),
            (_, Heat.Hot) => new(50, 75),
            (_, Heat.Warm) => new(37, 60),
            (_, Heat.Cool) => new(28, 40),
            _ => new(5, 30),
        };
    }

    /// <summary>Temperature at the skin in the first moment of touch. [degrees C]</summary>
    /// <param name="bodyC">Temperature of what is touched. [degrees C]</param>
    /// <param name="effusivity">Its effusivity, above 0. [W s^0.5 / m2 K]</param>
    internal static double ContactC(double bodyC, double effusivity) =>
        SkinC + ((bodyC - SkinC) * effusivity / (SkinEffusivity + effusivity));
}
