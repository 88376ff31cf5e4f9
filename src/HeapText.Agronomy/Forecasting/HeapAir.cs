namespace HeapText.Agronomy.Forecasting;

/// <summary>Air in and through a heap.</summary>
internal static class HeapAir
{
    /// <summary>Air-filled share of the volume. [m3/m3]</summary>
    /// <param name="organic">Volatile solids. [kg]</param>
    /// <param name="ash">Ash. [kg]</param>
    /// <param name="water">Water. [kg]</param>
    /// <param name="cubicMetres">Volume of the heap. [m3]</param>
    /// <remarks>
    /// <code>F = 1 − (O / 1550 + A / 2650 + W / 1000) / V, 0 to 1</code>
    /// O, A, W mass of organic matter, ash, water [kg]; V volume [m3].
    /// <para>Source: [AGNEW] in docs/agronomy/sources.md, particle densities from memory.</para>
    /// </remarks>
    internal static double Space(double organic, double ash, double water, double cubicMetres) => Math.Clamp(
        1 - (((organic / Parameters.OrganicDensity) + (ash / Parameters.AshDensity)
            + (water / Parameters.WaterDensity)) / cubicMetres), 0, 1);

    /// <summary>How freely air is drawn up, against an air space of one half. [-]</summary>
    /// <param name="airSpace">Air-filled share of the volume. [m3/m3]</param>
    /// <remarks>
    /// <code>K = 2 F³ / (1 − F)², at most 10</code>
    /// Kozeny-Carman with the particle size left in the constant.
    /// <para>Source: form [KOZENY], from memory; ceiling fitted.</para>
    /// </remarks>
    internal static double Openness(double airSpace)
    {
        var solid = 1 - airSpace;
        var open = 2 * airSpace * airSpace * airSpace;
        return open >= Parameters.MostDraught * solid * solid ? Parameters.MostDraught : open / (solid * solid);
    }

    /// <summary>Water that air holds when saturated, and its slope. [kg/kg dry air, and per K]</summary>
    /// <param name="celsius">0 to 85. [C]</param>
    /// <remarks>
    /// <code>p = 611.2 exp(17.62 T / (243.12 + T));  y = 0.622 p / (P − p)</code>
    /// p vapour pressure [Pa]; P air pressure, 101325 Pa. Within 0.5 % from 0 to 60 °C, 1 % to 85 °C.
    /// <para>Source: [MAGNUS], from memory. Checked against: psychrometric tables, from memory: 60 °C 0.153.</para>
    /// </remarks>
    internal static (double Held, double Slope) Saturation(double celsius)
    {
        const double pressure = 101_325, a = 17.62, b = 243.12;
        var inverse = 1 / (b + celsius);
        var vapour = 611.2 * Math.Exp(a * celsius * inverse);
        var ratio = 0.622 / (pressure - vapour);
        return (vapour * ratio, pressure * ratio * ratio / 0.622 * vapour * a * b * inverse * inverse);
    }
}
