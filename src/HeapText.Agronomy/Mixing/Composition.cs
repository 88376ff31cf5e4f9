using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Mixing;

/// <summary>What a material is made of, as far as a heap is concerned.</summary>
/// <param name="Carbon">Carbon of dry matter. [kg/kg, dry]</param>
/// <param name="Nitrogen">Total nitrogen of dry matter. [kg/kg, dry]</param>
/// <param name="Moisture">Water of fresh mass. [kg/kg, wet]</param>
public sealed record Composition(Fraction Carbon, Fraction Nitrogen, Fraction Moisture)
{
    /// <summary>How far three given figures may disagree before they are refused. Chosen.</summary>
    private const double Disagreement = 0.01;

    /// <summary>Joins the table's figures with those given; a given figure wins.</summary>
    /// <param name="material">The material, or null when every figure is given.</param>
    /// <param name="given">Figures that override the table.</param>
    /// <remarks>
    /// <code>C = N R</code>
    /// C, N carbon and nitrogen [kg/kg, dry]; R ratio [kg C / kg N]. Two given fix the third. With one given for a
    /// known material, the table's carbon is kept, or its nitrogen when the carbon is given.
    /// <para>Source: [CORNELL] in docs/agronomy/sources.md.</para>
    /// </remarks>
    /// <returns>The composition, or the fault of the first field that is missing or cannot be.</returns>
    public static (Composition? Composition, InputFault? Fault) Resolve(Material? material, GivenFigures given)
    {
        if (given.Check() is { } fault)
        {
            return (null, fault);
        }

        var figures = material?.Figures;
        if ((given.MoisturePercent ?? figures?.Moisture.Percent) is not { } moisture)
        {
            return (null, new InputFault("moisturePercent", "must be given: the table has none"));
        }

        var (carbon, nitrogen) = Complete(given, figures);
        if (carbon is null || nitrogen is null)
        {
            var missing = given.CarbonPercent is null && given.NitrogenPercent is null
                ? "nitrogenPercent" : given.CarbonPercent is null ? "carbonPercent" : "nitrogenPercent";
            return (null, new InputFault(missing, "must be given, with two of carbonPercent, nitrogenPercent and cn"));
        }

        return CheckTogether(given, carbon.Value, nitrogen.Value) is { } together
            ? (null, together)
            : (new Composition(
                Fraction.FromPercent(carbon.Value),
                Fraction.FromPercent(nitrogen.Value),
                Fraction.FromPercent(moisture)), null);
    }

    private static (double? Carbon, double? Nitrogen) Complete(GivenFigures given, MaterialFigures? figures) =>
        given switch
        {
            { CarbonPercent: { } c, NitrogenPercent: { } n } => (c, n),
            { CarbonPercent: { } c, CarbonNitrogen: { } r } => (c, c / r),
            { NitrogenPercent: { } n, CarbonNitrogen: { } r } => (n * r, n),
            { CarbonNitrogen: { } r } => (figures?.Carbon.Percent, figures?.Carbon.Percent / r),
            _ => (given.CarbonPercent ?? figures?.Carbon.Percent, given.NitrogenPercent ?? figures?.Nitrogen.Percent),
        };

    private static InputFault? CheckTogether(GivenFigures given, double carbon, double nitrogen)
    {
        if (given.CarbonNitrogen is { } ratio && Math.Abs(carbon - (nitrogen * ratio)) > Disagreement * carbon)
        {
            return new InputFault("cn", "disagrees with carbonPercent / nitrogenPercent");
        }

        var derived = given.CarbonPercent is null && given.CarbonNitrogen is not null ? "cn"
            : given.NitrogenPercent is not null ? "nitrogenPercent" : "carbonPercent";
        return carbon + nitrogen <= 100
            ? null
            : new InputFault(derived, "makes carbon and nitrogen more than 100 % of dry matter");
    }
}
