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
    /// <param name="built">C/N as built; infinite without nitrogen. [kg C / kg N]</param>
    /// <param name="now">C/N of what is left. [kg C / kg N]</param>
    /// <remarks>
    /// <code>
    /// f = max(0.5, Rb / 20) where Rb &lt; 20;  max(0.3, 40 / R) where R &gt; 40;  else 1
    /// </code>
    /// Rb as built, R now. Too much nitrogen hinders by ammonia while it is fresh; a ratio that falls low because the
    /// carbon has rotted away does not. Too much carbon slows until enough of it is gone.
    /// <para>Source: bounds [NRAES54]; form and floors chosen.</para>
    /// </remarks>
    internal static double CarbonNitrogen(double built, double now) =>
        built < Parameters.LeastCarbonNitrogen
            ? Math.Max(Parameters.LeastNitrogenFactor, built / Parameters.LeastCarbonNitrogen)
            : now > Parameters.MostCarbonNitrogen
                ? Math.Max(Parameters.LeastCarbonFactor, Parameters.MostCarbonNitrogen / now)
                : 1;
}
