using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>A fertiliser with as much nitrogen as compost yields in its first year.</summary>
/// <param name="Fertiliser">Which.</param>
/// <param name="Amount">How much of it, if it were the only one: never add several up. [kg]</param>
public sealed record FertiliserEquivalent(Fertiliser Fertiliser, Mass Amount);

/// <summary>How much compost a crop is given and what that is worth.</summary>
public sealed record UseResult
{
    /// <summary>The crop, with its rates.</summary>
    public required Crop Crop { get; init; }

    /// <summary>Compost for all the ground or plants at the typical rate, as it lies. [kg]</summary>
    public required Mass Needed { get; init; }

    /// <summary>The same at the low rate. [kg]</summary>
    public required Mass NeededLow { get; init; }

    /// <summary>The same at the high rate. [kg]</summary>
    public required Mass NeededHigh { get; init; }

    /// <summary>Ground that the compost there is covers at the typical rate; all of it where none was named. [m2]
    /// </summary>
    public required double CoversM2 { get; init; }

    /// <summary>Plants that it serves at the typical rate, not rounded.</summary>
    public required double CoversPlants { get; init; }

    /// <summary>Nitrogen in the compost there is, or else in what is needed. [kg]</summary>
    public required Mass Nitrogen { get; init; }

    /// <summary>What crops can take of it in the first year. [kg]</summary>
    public required Mass NitrogenFirstYear { get; init; }

    /// <summary>What would yield the first year's nitrogen: one of these, not all.</summary>
    public required IReadOnlyList<FertiliserEquivalent> Equivalents { get; init; }

    /// <summary>Money saved this year; null without prices. [local money]</summary>
    public double? Value { get; init; }

    /// <summary>Money saved in the second year by the same compost; null without prices. [local money]</summary>
    public double? ValueLater { get; init; }

    /// <summary>Keys of <see cref="UseCautions"/>.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
