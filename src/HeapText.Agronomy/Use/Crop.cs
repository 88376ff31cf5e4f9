using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>How compost is given to a crop.</summary>
public enum RateBasis
{
    /// <summary>Spread over the ground. [kg/m2]</summary>
    Area,

    /// <summary>Into the hole or round the plant. [kg/plant]</summary>
    Plant,

    /// <summary>As a part of the volume of a potting mix. [L/L]</summary>
    Mix,
}

/// <summary>How the part that is eaten meets the ground.</summary>
public enum FoodContact
{
    /// <summary>It hangs or stands clear of the soil, or is not eaten.</summary>
    None,

    /// <summary>It touches soil, or may be splashed with it.</summary>
    Soil,

    /// <summary>It touches soil and is eaten raw.</summary>
    Raw,
}

/// <summary>A compost rate with the range its source bears. [kg/m2 or kg/plant, as compost lies]</summary>
/// <param name="Low">Least that is advised.</param>
/// <param name="Typical">What is told.</param>
/// <param name="High">Most that is advised.</param>
public sealed record CompostRate(double Low, double Typical, double High)
{
    internal CompostRate Times(double factor) => new(Low * factor, Typical * factor, High * factor);
}

/// <summary>A crop and how much compost it is given.</summary>
public sealed record Crop
{
    /// <summary>Stable key, kebab case.</summary>
    public required string Key { get; init; }

    /// <summary>How its source gives the rate.</summary>
    public required RateBasis Basis { get; init; }

    /// <summary>Rate over the ground. [kg/m2]</summary>
    public required CompostRate PerM2 { get; init; }

    /// <summary>Rate a hole, plant or pot. [kg/plant]</summary>
    public required CompostRate PerPlant { get; init; }

    /// <summary>Part of a potting mix; null where compost goes into the field. [L/L]</summary>
    public Fraction? MixShare { get; init; }

    /// <summary>Usual stand, which turns ground into plants and back. [plants/m2]</summary>
    public required double PlantsPerM2 { get; init; }

    /// <summary>How the part that is eaten meets the ground.</summary>
    public required FoodContact Contact { get; init; }

    /// <summary>Whether compost goes in before the crop does, so that it may lie there for a month.</summary>
    public required bool BeforePlanting { get; init; }

    /// <summary>Years from one giving to the next; null when it is given once. [a]</summary>
    public int? EveryYears { get; init; }

    /// <summary>Where the figures come from, part by part.</summary>
    public required string Source { get; init; }

    /// <summary>How sure: A read; C from memory; D weak estimate or chosen.</summary>
    public required string Confidence { get; init; }
}
