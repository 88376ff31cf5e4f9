namespace HeapText.Agronomy.Mixing;

/// <summary>Figures measured on the spot; each one given overrides the table.</summary>
public sealed record GivenFigures
{
    /// <summary>Nothing given: the table holds.</summary>
    public static GivenFigures None { get; } = new();

    /// <summary>Carbon of dry matter. [%]</summary>
    public double? CarbonPercent { get; init; }

    /// <summary>Total nitrogen of dry matter. [%]</summary>
    public double? NitrogenPercent { get; init; }

    /// <summary>Carbon-to-nitrogen ratio. [kg C / kg N]</summary>
    public double? CarbonNitrogen { get; init; }

    /// <summary>Water of fresh mass. [%]</summary>
    public double? MoisturePercent { get; init; }

    /// <summary>Fresh mass as piled. [kg/m3]</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>The first figure that cannot be, by its name in the command line's JSON; or null.</summary>
    public InputFault? Check() =>
        InputFault.OfPercent("carbonPercent", CarbonPercent)
        ?? InputFault.OfPercent("nitrogenPercent", NitrogenPercent)
        ?? (CarbonNitrogen is null or (> 0 and <= MostCarbonNitrogen)
            ? null : new InputFault("cn", "must be above 0 and at most 10000"))
        ?? InputFault.OfPercent("moisturePercent", MoisturePercent)
        ?? (DensityKgPerM3 is null or (>= LeastDensity and <= MostDensity)
            ? null : new InputFault("densityKgPerM3", "must be from 1 to 5000"));

    private const double MostCarbonNitrogen = 10_000;
    private const double LeastDensity = 1;
    private const double MostDensity = 5_000;
}
