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

    /// <summary>Before the key of a liquid, which fills no space: pour it on with the water.</summary>
    public const string LiquidPrefix = "liquid:";
}
