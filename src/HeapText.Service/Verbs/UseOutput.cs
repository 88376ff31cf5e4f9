using HeapText.Agronomy.Use;

namespace HeapText.Service.Verbs;

/// <summary>What <c>use</c> writes; money is null without prices.</summary>
/// <param name="RateKgPerM2">Typical rate over the ground.</param>
/// <param name="KgPerPlant">The same for one plant, hole or pot.</param>
/// <param name="KgNeeded">For all the ground or plants at the typical rate.</param>
/// <param name="KgNeededLow">At the low rate.</param>
/// <param name="KgNeededHigh">At the high rate.</param>
/// <param name="EveryYears">Years from one giving to the next; null when it is given once.</param>
/// <param name="CoversM2">Ground that <c>compostKg</c> covers, or all that was named.</param>
/// <param name="CoversPlants">Plants that it serves.</param>
/// <param name="NitrogenKgTotal">In <c>compostKg</c>, or in what is needed.</param>
/// <param name="NitrogenKgFirstYear">What crops can take of it in the first year.</param>
/// <param name="FertiliserEquivalent">One of these holds the first year's nitrogen; they do not add up.</param>
/// <param name="Value">Money saved this year.</param>
/// <param name="ValueLater">Money saved in the second year.</param>
/// <param name="Cautions">Keys.</param>
internal sealed record UseOutput(
    double RateKgPerM2,
    double KgPerPlant,
    double KgNeeded,
    double KgNeededLow,
    double KgNeededHigh,
    int? EveryYears,
    double CoversM2,
    double CoversPlants,
    double NitrogenKgTotal,
    double NitrogenKgFirstYear,
    IReadOnlyList<FertiliserOutput> FertiliserEquivalent,
    double? Value,
    double? ValueLater,
    IReadOnlyList<string> Cautions)
{
    internal static UseOutput From(UseResult result) => new(
        result.Crop.PerM2.Typical,
        result.Crop.PerPlant.Typical,
        result.Needed.Kilograms,
        result.NeededLow.Kilograms,
        result.NeededHigh.Kilograms,
        result.Crop.EveryYears,
        result.CoversM2,
        result.CoversPlants,
        result.Nitrogen.Kilograms,
        result.NitrogenFirstYear.Kilograms,
        [.. result.Equivalents.Select(one => new FertiliserOutput(one.Fertiliser.Key, one.Amount.Kilograms))],
        result.Value,
        result.ValueLater,
        result.Cautions);
}

/// <summary>Some of one fertiliser.</summary>
internal sealed record FertiliserOutput(string Name, double Kg);
