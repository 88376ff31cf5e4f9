using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Mixing;

/// <summary>What came of a mix.</summary>
public abstract record MixResult
{
    private MixResult() { }

    /// <summary>The mix.</summary>
    /// <param name="Mix">Its figures.</param>
    public sealed record Solved(Mix Mix) : MixResult;

    /// <summary>The problem cannot be meant.</summary>
    /// <param name="Fault">The first fault.</param>
    public sealed record Faulty(InputFault Fault) : MixResult;
}

/// <summary>A mix before watering, and the water that brings it to the moisture sought.</summary>
/// <param name="Fresh">Mass as it is. [kg]</param>
/// <param name="Dry">Mass without water. [kg]</param>
/// <param name="Carbon">Carbon that microbes can eat; null when a part has mass and moisture alone. [kg]</param>
/// <param name="Nitrogen">Nitrogen that microbes can eat; null likewise. [kg]</param>
/// <param name="CarbonNitrogen">Carbon-to-nitrogen ratio; null likewise, or without nitrogen. [kg C / kg N]</param>
/// <param name="Moisture">Water of fresh mass. [kg/kg, wet]</param>
/// <param name="WaterToAdd">Water to add; one litre weighs one kilogram. [L]</param>
public sealed record Mix(
    Mass Fresh, Mass Dry, Mass? Carbon, Mass? Nitrogen, double? CarbonNitrogen, Fraction Moisture, Volume WaterToAdd);
