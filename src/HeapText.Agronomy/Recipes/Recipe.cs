using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Recipes;

/// <summary>A heap to build: the same layers each round, a number of rounds.</summary>
public sealed record Recipe
{
    /// <summary>How many times the layers are laid, 3 to 10.</summary>
    public required int Rounds { get; init; }

    /// <summary>The layers of one round in building order, in whole or half measures; water comes last.</summary>
    public required IReadOnlyList<Layer> PerRound { get; init; }

    /// <summary>The same materials for the whole heap.</summary>
    public required IReadOnlyList<StockItem> Total { get; init; }

    /// <summary>Water for the whole heap. [L]</summary>
    public required Volume Water { get; init; }

    /// <summary>Water after each round. [L]</summary>
    public Volume WaterPerRound => Volume.FromLitres(Water.Litres / Rounds);

    /// <summary>Space the heap fills as piled: the sum of its materials, liquids aside. [L]</summary>
    public required Volume Volume { get; init; }

    /// <summary>Mass after watering. [kg]</summary>
    public required Mass Mass { get; init; }

    /// <summary>Ratio of what microbes can eat, charcoal aside. [kg C / kg N]</summary>
    public required double CarbonNitrogen { get; init; }

    /// <summary>C/N as the materials vary over their ranges in materials.csv. [kg C / kg N]</summary>
    public required RatioRange CarbonNitrogenRange { get; init; }

    /// <summary>Moisture after watering. [kg/kg, wet]</summary>
    public required Fraction Moisture { get; init; }

    /// <summary>How the heap stands.</summary>
    public required HeapDimensions Dimensions { get; init; }

    /// <summary>How many heaps of this very recipe the stock allows, at least 1.</summary>
    public required int Heaps { get; init; }
}

/// <summary>One layer of a round.</summary>
/// <param name="Material">Stable key.</param>
/// <param name="Role">What it does in the heap.</param>
/// <param name="Amount">A multiple of a half. [measures]</param>
/// <param name="Measure">Stable key.</param>
public sealed record Layer(string Material, MaterialRole Role, double Amount, string Measure);

/// <summary>How a straight-sided heap stands, within the bounds of its method. [m]</summary>
/// <param name="WidthM">Width; of a ring, the diameter. [m]</param>
/// <param name="LengthM">Length, no less than the width; of a ring, the diameter. [m]</param>
/// <param name="HeightM">Height; of a pit, the depth filled. [m]</param>
public sealed record HeapDimensions(double WidthM, double LengthM, double HeightM);
