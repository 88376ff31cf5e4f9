namespace HeapText.Agronomy.Recipes;

/// <summary>
/// The hard limits of a heap and the values sought, its size aside, which the method bounds (Heap/methods.csv).
/// Sources by key in docs/agronomy/sources.md.
/// </summary>
internal static class HeapLimits
{
    /// <summary>
    /// C/N of what microbes can eat. [kg C / kg N] Source: [NOP] for 25-40; 25-35 sought [COOPERBAND].
    /// </summary>
    internal const double LeastCarbonNitrogen = 25, MostCarbonNitrogen = 40, SoughtCarbonNitrogen = 30;

    /// <summary>
    /// C/N that materials may bring a heap to as they vary. [kg C / kg N] Source: [COOPERBAND], acceptable 20-40.
    /// </summary>
    internal const double LeastVariedCarbonNitrogen = 20, MostVariedCarbonNitrogen = 40;

    /// <summary>Within this of the C/N sought one recipe is as good as another. [kg C / kg N] Chosen.</summary>
    internal const double CarbonNitrogenLeeway = 1;

    /// <summary>
    /// Moisture before watering. [kg/kg, wet] Source: [NRAES54] preferred 50-60 %, reasonable to 65 %.
    /// </summary>
    internal const double MostMoisture = 0.60, MostMoistureWhenWet = 0.65;

    /// <summary>
    /// Moisture that water brings the heap to. [kg/kg, wet] Source: [NRAES54], middle of the preferred.
    /// </summary>
    internal const double SoughtMoisture = 0.55, LeastMoisture = 0.50;

    /// <summary>Bulk density, water included. [kg/L] Source: [NRAES54], 640 kg/m3, from memory.</summary>
    internal const double MostDensity = 0.640;

    /// <summary>Shares of the volume. Common practice, no source; manure of poultry by its nitrogen. Chosen.</summary>
    internal const double
        MostEarth = 0.10,
        MostCharcoal = 0.10,
        MostMineral = 0.03,
        MostWoodAsh = 0.02,
        MostFeed = 0.05,
        MostManure = 0.50,
        MostFreshPoultry = 0.20;

    /// <summary>Rounds of layers. Chosen, so that the recipe can be carried in the head.</summary>
    internal const int FewestRounds = 3, MostRounds = 10;

    /// <summary>Height of one round. [m] Source: [LAYERS].</summary>
    internal const double LowestRoundM = 0.15, HighestRoundM = 0.25;
}
