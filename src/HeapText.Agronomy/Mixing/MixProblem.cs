namespace HeapText.Agronomy.Mixing;

/// <summary>What goes into a mix, and how moist it should be.</summary>
public sealed record MixProblem
{
    /// <summary>Moisture sought when none is given: the middle of the preferred 50-60 %. [%]</summary>
    public const double DefaultTargetMoisturePercent = 55;

    /// <summary>One or more parts.</summary>
    public required IReadOnlyList<MixPart> Parts { get; init; }

    /// <summary>Moisture sought, 0 to below 100. [%]</summary>
    public double TargetMoisturePercent { get; init; } = DefaultTargetMoisturePercent;
}

/// <summary>One part of a mix.</summary>
/// <param name="Material">Stable key; null when the figures are given: moisture, and for a C/N two of carbon, nitrogen
/// and their ratio.</param>
/// <param name="MassKg">Fresh mass, 0 or more. [kg]</param>
/// <param name="Given">Figures that override the table.</param>
public sealed record MixPart(string? Material, double MassKg, GivenFigures Given)
{
    /// <summary>Whether nothing is known of its carbon and nitrogen, as where only moisture is worked out.</summary>
    internal bool HasMoistureAlone => Material is null
        && Given is { CarbonPercent: null, NitrogenPercent: null, CarbonNitrogen: null };
}
