namespace HeapText.Agronomy.Forecasting;

/// <summary>What slows decay: each factor is 1 at its best and falls towards 0.</summary>
internal static class Factors
{
    /// <summary>Effect of temperature. [-]</summary>
    /// <param name="celsius">Temperature of the zone. [C]</param>
    /// <remarks>
    /// <code>
    /// f(T) = (T − Tx)(T − Tn)² / ((To − Tn) ((To − Tn)(T − To) − (To − Tx)(To + Tn − 2T)))
    ///
    ///  1 |            __
    ///    |         _-'  \
    ///    |      _-'      |
    ///    |___--'          \
    ///     Tn         To   Tx
    /// </code>
    /// Tn coldest, To best, Tx hottest [C]; 0 outside. Valid from Tn to Tx. Haug's form is rejected: it peaks at 72 °C
    /// where most measurements find 55-60 °C.
    /// <para>Source: [ROSSO], [RICHARD] in docs/agronomy/sources.md, from memory.</para>
    /// </remarks>
    internal static double Temperature(double celsius)
    {
        const double low = Parameters.ColdestC, best = Parameters.BestC, high = Parameters.HottestC;
        if (celsius is <= low or >= high) return 0;
        var rise = celsius - low;
        return (celsius - high) * rise * rise
            / ((best - low) * (((best - low) * (celsius - best)) - ((best - high) * (best + low - (2 * celsius)))));
    }

    /// <summary>Effect of moisture: too dry is slow, too wet is left to the air space. [-]</summary>
    /// <param name="moisture">Moisture. [kg/kg, wet]</param>
    /// <remarks>
    /// <code>f(w) = 1 / (exp(7.0622 − 17.684 w) + 1)</code>
    /// <para>Source: [HAUG], from memory. Checked against: 0.20 0.03, 0.40 0.50, 0.50 0.86, 0.60 0.97.</para>
    /// </remarks>
    internal static double Moisture(double moisture) =>
        1 / (Math.Exp(Parameters.MoistureOffset - (Parameters.MoistureSlope * moisture)) + 1);

    /// <summary>Effect of the space air has: too packed or too wet is slow. [-]</summary>
    /// <param name="airSpace">Air-filled share of the volume. [m3/m3]</param>
    /// <remarks>
    /// <code>f(F) = 1 / (exp(3.4945 − 23.675 F) + 1)</code>
    /// <para>Source: [HAUG], from memory. Checked against: 0.10 0.25, 0.20 0.78, 0.30 0.97.</para>
    /// </remarks>
    internal static double AirSpace(double airSpace) =>
        1 / (Math.Exp(Parameters.AirSpaceOffset - (Parameters.AirSpaceSlope * airSpace)) + 1);

    /// <summary>Effect of the carbon-to-nitrogen ratio. [-]</summary>
    /// <param name="ratio">C/N of what microbes can eat; infinite without nitrogen. [kg C / kg N]</param>
    /// <remarks>
    /// <code>
    /// f(R) = max(0.5, R / 20) below 20;  1 from 20 to 40;  max(0.3, 40 / R) above 40
    /// </code>
    /// Below, ammonia and salts hinder; above, nitrogen lacks and is used again and again.
    /// <para>Source: bounds [NRAES54]; form and floors chosen.</para>
    /// </remarks>
    internal static double CarbonNitrogen(double ratio) => ratio switch
    {
        < Parameters.LeastCarbonNitrogen =>
            Math.Max(Parameters.LeastNitrogenFactor, ratio / Parameters.LeastCarbonNitrogen),
        > Parameters.MostCarbonNitrogen =>
            Math.Max(Parameters.LeastCarbonFactor, Parameters.MostCarbonNitrogen / ratio),
        _ => 1,
    };
}
