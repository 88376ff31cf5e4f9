namespace HeapText.Agronomy.Recipes;

/// <summary>The one list of note keys of a recipe.</summary>
public static class Notes
{
    /// <summary>The heap is wetter than 60 % and gets no water: keep rain off and turn early.</summary>
    public const string Wet = "wet";

    /// <summary>No heap fits the given space.</summary>
    public const string SpaceTooSmall = "space-too-small";

    /// <summary>Lime stays out because it drives nitrogen from manure.</summary>
    public const string LimeWithManure = "lime-with-manure";

    /// <summary>
    /// As the materials vary, C/N may fall below 20: if it smells of urine, mix in dry brown stuff at the next turning.
    /// </summary>
    public const string CarbonNitrogenUncertainLow = "cn-uncertain-low";

    /// <summary>As the materials vary, C/N may rise above 40: if it does not heat, add manure or green stuff.</summary>
    public const string CarbonNitrogenUncertainHigh = "cn-uncertain-high";

    /// <summary>Before the key of a liquid, which fills no space: pour it on with the water.</summary>
    public const string LiquidPrefix = "liquid:";
}
