using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>How much compost a crop is given, the nitrogen it brings, and what that saves.</summary>
public static class CompostUse
{
    /// <summary>Part of compost's nitrogen that crops can take in the first year. [EGHBALL], from memory.</summary>
    public static Fraction FirstYear { get; } = Fraction.FromPercent(15);

    /// <summary>The same in the second year. [EGHBALL], from memory. With the first 23 %, the most that [HORROCKS]
    /// found used in three to four years.</summary>
    public static Fraction SecondYear { get; } = Fraction.FromPercent(8);

    /// <summary>Works out a use of compost.</summary>
    /// <param name="request">Crop, ground or plants, and what is known of the compost.</param>
    /// <remarks>
    /// <code>
    /// Q = r A    N = Q' (1 − w) n    N1 = f N    F = N1 / g    value = N1 min(p / g)
    /// </code>
    /// Q compost needed [kg]; r typical rate [kg/m2 or kg/plant]; A ground [m2] or plants; Q' the compost there is, or
    /// else Q [kg]; w moisture [kg/kg, wet]; n nitrogen [kg/kg, dry]; N, N1 nitrogen, and that of the first year [kg];
    /// f part of the first year; F a fertiliser [kg] with g nitrogen [kg/kg] at price p [money/kg].
    /// <para>
    /// Mass balance but for r and f. Valid for compost of dung and plants; soil that ties up nitrogen yields less.
    /// Source: rates in crops.csv; [EGHBALL] in docs/agronomy/sources.md. Checked against: Reference/use.csv.
    /// </para>
    /// </remarks>
    /// <exception cref="ArgumentException">A request that <see cref="UseRequest.Check"/> finds fault with.</exception>
    public static UseResult For(UseRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Check() is { } fault)
        {
            throw new ArgumentException(fault.ToString(), nameof(request));
        }

        var crop = CropTable.All.Single(one => one.Key == request.Crop);
        var (rate, extent) = request.AreaM2 is { } area ? (crop.PerM2, area) : (crop.PerPlant, request.Plants!.Value);
        var needed = Mass.FromKilograms(rate.Typical * extent);
        var compost = request.CompostKg is { } there ? Mass.FromKilograms(there) : needed;
        var nitrogen = NitrogenOf(compost, request);
        var firstYear = nitrogen * FirstYear;
        var cheapest = FertiliserTable.CheapestNitrogen(request.Prices);
        return new UseResult
        {
            Crop = crop,
            Needed = needed,
            NeededLow = Mass.FromKilograms(rate.Low * extent),
            NeededHigh = Mass.FromKilograms(rate.High * extent),
            CoversM2 = compost.Kilograms / crop.PerM2.Typical,
            CoversPlants = compost.Kilograms / crop.PerPlant.Typical,
            Nitrogen = nitrogen,
            NitrogenFirstYear = firstYear,
            Equivalents =
            [
                .. FertiliserTable.All.Select(one => new FertiliserEquivalent(one, one.CarryingNitrogen(firstYear))),
            ],
            Value = cheapest?.PerKgNitrogen * firstYear.Kilograms,
            ValueLater = cheapest?.PerKgNitrogen * (nitrogen * SecondYear).Kilograms,
            Cautions = UseCautions.For(crop, request.State, request.Hygiene, cheapest?.Fertiliser),
        };
    }

    private static Mass NitrogenOf(Mass compost, UseRequest request)
    {
        var moisture = request.MoisturePercent is { } wet ? Fraction.FromPercent(wet) : ReadyCompost.Moisture;
        var nitrogen = request.NitrogenPercent is { } rich ? Fraction.FromPercent(rich) : ReadyCompost.Nitrogen;
        return compost * moisture.Rest() * nitrogen;
    }
}
