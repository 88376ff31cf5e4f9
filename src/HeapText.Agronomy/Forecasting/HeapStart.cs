using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Forecasting;

/// <summary>A heap on the day it is built: what its matter is made of, as far as rotting goes. [kg, m3]</summary>
internal sealed record HeapStart
{
    internal required double Fast { get; init; }

    internal required double Medium { get; init; }

    internal required double Slow { get; init; }

    /// <summary>Volatile solids that do not rot.</summary>
    internal required double Lasting { get; init; }

    internal required double Ash { get; init; }

    /// <summary>Water the materials bring.</summary>
    internal required double WaterWithin { get; init; }

    internal required double WaterAdded { get; init; }

    /// <summary>Carbon that microbes can eat.</summary>
    internal required double Carbon { get; init; }

    internal required double Nitrogen { get; init; }

    /// <summary>C/N; infinite without nitrogen. [kg C / kg N]</summary>
    internal double CarbonNitrogen => Nitrogen > 0 ? Carbon / Nitrogen : double.PositiveInfinity;

    internal required double CubicMetres { get; init; }

    internal required HeapBody Body { get; init; }

    /// <summary>Share of life present, 0 to 1.</summary>
    internal required double Vigour { get; init; }

    internal double Dry => Fast + Medium + Slow + Lasting + Ash;

    /// <summary>Reads a request without fault.</summary>
    /// <remarks>
    /// <code>VS = min(0.97, 1.8 C) Q (1 − w);  ash = Q (1 − w) − VS</code>
    /// VS volatile solids [kg]; C carbon [kg/kg, dry]; Q fresh mass [kg]; w moisture [kg/kg, wet].
    /// <para>Source: [GOTAAS] in docs/agronomy/sources.md, within 2-10 %; ceiling chosen.</para>
    /// </remarks>
    internal static HeapStart From(ForecastRequest request)
    {
        // Sorted, so that rounding does not depend on the order the parts came in.
        var sums = default(Sums);
        foreach (var part in request.Parts.OrderBy(part => part.Material, StringComparer.Ordinal)
            .ThenBy(part => part.MassKg).ThenBy(part => part.DryKg))
        {
            sums.Add(part);
        }

        var volume = request.VolumeLitres / 1000
            ?? Math.Max(sums.Dry / Parameters.OrganicDensity, sums.CubicMetres);
        var body = request.Dimensions is { } heap
            ? new HeapBody(heap.WidthM, heap.LengthM, heap.HeightM)
            : HeapBody.Usual(volume);
        return new HeapStart
        {
            Fast = sums.Fast,
            Medium = sums.Medium,
            Slow = sums.Slow,
            Lasting = sums.Volatile - sums.Fast - sums.Medium - sums.Slow,
            Ash = sums.Dry - sums.Volatile,
            WaterWithin = sums.Water,
            WaterAdded = request.WaterLitres,
            Carbon = sums.Carbon,
            Nitrogen = sums.Nitrogen,
            CubicMetres = volume,
            Body = body.ScaledTo(volume),
            Vigour = VigourOf(sums.Starter / sums.Dry),
        };
    }

    private static double VigourOf(double starter) => Parameters.VigourAtStart
        + ((Parameters.VigourWithDung - Parameters.VigourAtStart)
            * Math.Min(1, starter / Parameters.DungThatStarts));

    private struct Sums
    {
        internal double Dry, Water, Volatile, Fast, Medium, Slow, Carbon, Nitrogen, Starter, CubicMetres;

        internal void Add(ForecastPart part)
        {
            var (material, composition, dry) = (part.Known, part.Composition, part.DryKg);
            var decay = DecayClass.Of(material);
            var solids = dry * Math.Min(
                Parameters.MostVolatile, Parameters.SolidsPerCarbon * composition.Carbon.Value);
            Dry += dry;
            CubicMetres += part.CubicMetres;
            Water += part.MassKg - dry;
            Volatile += solids;
            Fast += solids * decay.Fast;
            Medium += solids * decay.Medium;
            Slow += solids * decay.Slow;
            if (material?.Role is MaterialRole.Manure or MaterialRole.Earth) Starter += dry;
            if (material is { IsFood: false }) return;
            Carbon += dry * composition.Carbon.Value;
            Nitrogen += dry * composition.Nitrogen.Value;
        }
    }
}
