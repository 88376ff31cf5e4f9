namespace HeapText.Agronomy.Forecasting;

/// <summary>Core or shell of a heap: its matter and warmth. [kg, C]</summary>
internal struct Zone
{
    internal double Fast, Medium, Slow, Lasting, Ash, Water, Celsius;

    /// <summary>Share of the life it can hold, 0 to 1.</summary>
    internal double Vigour;

    internal readonly double Volatile => Fast + Medium + Slow + Lasting;

    internal readonly double Dry => Volatile + Ash;

    internal readonly double Moisture => Water / (Water + Dry);

    /// <summary>Heat it takes to warm it. [J/K]</summary>
    internal readonly double HeatCapacity =>
        (Water * Parameters.WaterHeat) + (Dry * Parameters.SolidsHeat);

    /// <summary>How damp the air in its pores is. [-]</summary>
    internal readonly double Dampness => Water / (Water + (Parameters.HalfDampMoisture * (Water + Dry)));

    /// <summary>Carbon it would give off a day in a jar at 37 C with water and air, per volatile solids.
    /// [kg C/kg VS d]</summary>
    internal readonly double Unrest => TestFactor / Parameters.SolidsPerCarbon / Volatile
        * ((Fast * Parameters.FastRate) + (Medium * Parameters.MediumRate) + (Slow * Parameters.SlowRate));

    private static readonly double TestFactor = Factors.Temperature(Parameters.StableTestC);

    /// <summary>Both together, well mixed.</summary>
    internal static Zone Mix(in Zone one, in Zone other)
    {
        var share = one.HeatCapacity / (one.HeatCapacity + other.HeatCapacity);
        var dryShare = one.Dry / (one.Dry + other.Dry);
        return new Zone
        {
            Fast = one.Fast + other.Fast,
            Medium = one.Medium + other.Medium,
            Slow = one.Slow + other.Slow,
            Lasting = one.Lasting + other.Lasting,
            Ash = one.Ash + other.Ash,
            Water = one.Water + other.Water,
            Celsius = (one.Celsius * share) + (other.Celsius * (1 - share)),
            Vigour = (one.Vigour * dryShare) + (other.Vigour * (1 - dryShare)),
        };
    }

    /// <summary>A part of it.</summary>
    internal readonly Zone Part(double share) => this with
    {
        Fast = Fast * share,
        Medium = Medium * share,
        Slow = Slow * share,
        Lasting = Lasting * share,
        Ash = Ash * share,
        Water = Water * share,
    };

    /// <summary>Water that brings it to a moisture, none when it is wetter. [kg]</summary>
    internal readonly double WaterToReach(double moisture) =>
        Math.Max(0, (Dry * moisture / (1 - moisture)) - Water);

    /// <summary>Takes in water of a temperature.</summary>
    internal void Pour(double water, double celsius)
    {
        var heat = water * Parameters.WaterHeat;
        Celsius = ((Celsius * HeatCapacity) + (celsius * heat)) / (HeatCapacity + heat);
        Water += water;
    }

    /// <summary>Rots for a while.</summary>
    /// <param name="pace">Product of all factors. [-]</param>
    /// <param name="growth">Product of the factors that also hold for growth. [-]</param>
    /// <param name="days">How long; an eighth at most, against rates below 1. [d]</param>
    /// <returns>Volatile solids destroyed. [kg]</returns>
    /// <remarks>
    /// <code>dX/dt = −k X φ;  dA/dt = g A (1 − A) φg</code>
    /// X a pool [kg]; k its rate [1/d]; φ product of the factors [-]; A life present [-]; g growth [1/d]. Of what is
    /// destroyed 90/162 becomes water and the rest leaves as carbon dioxide.
    /// <para>Source: first order does best among the models reviewed [MASON]; [HAUG] for multiplying factors.</para>
    /// </remarks>
    internal double Rot(double pace, double growth, double days)
    {
        var time = pace * days;
        var fast = Fast * Parameters.FastRate * time;
        var medium = Medium * Parameters.MediumRate * time;
        var slow = Slow * Parameters.SlowRate * time;
        Fast -= fast;
        Medium -= medium;
        Slow -= slow;
        var gone = fast + medium + slow;
        Water += gone * Parameters.WaterOfDecay;
        // A step of growth is capped at doubling, which keeps it below 1.
        Vigour += Vigour * (1 - Vigour) * Math.Min(1, Parameters.Growth * growth * days);
        return gone;
    }
}
