namespace HeapText.Agronomy.Recipes;

/// <summary>
/// Picks how a heap stands: sides a farmer can pace, high enough to keep heat where the volume allows.
/// </summary>
internal static class HeapShape
{
    private const double PaceM = 0.1, GoodHeightM = 1.2, GoodWidthM = 1.5;

    // How much each wish counts, per metre and per part of the volume. Chosen.
    private const double HeightWeight = 4, LengthWeight = 0.2, VolumeWeight = 5;

    /// <summary>Dimensions of a straight-sided heap. [m]</summary>
    /// <param name="litres">Volume, between the bounds <see cref="HeapSpace.LitresOf"/> gives. [L]</param>
    /// <param name="rounds">Rounds of layers, which bound the height.</param>
    /// <param name="space">The room there is.</param>
    /// <remarks>
    /// <code>V = W L H</code>
    /// V volume [m3]; W, L, H width, length, height [m]. W and L in steps of 0.1 m unless only a bound or the full height fits,
    /// H to the centimetre, so the product meets the volume within 1 %.
    /// <para>Source: geometry; straight sides chosen. Bounds: [LAYERS], [FAO2003] in docs/agronomy/sources.md.</para>
    /// </remarks>
    internal static HeapDimensions Of(double litres, int rounds, HeapSpace space)
    {
        var (low, high) = (HeapSpace.LowestM(rounds), space.HighestM(rounds));
        var best = new HeapDimensions(space.MostWidthM, space.MostLengthM, high);
        var least = double.PositiveInfinity;
        foreach (var width in Steps(HeapLimits.NarrowestM, space.MostWidthM))
        {
            var filling = Math.Round(litres / 1000 / (width * high), 2);
            foreach (var length in Steps(width, space.MostLengthM).Append(Math.Clamp(filling, width, space.MostLengthM)))
            {
                var exact = litres / 1000 / (width * length);
                var height = Math.Clamp(Math.Round(exact, 2), Math.Min(low, high), high);
                var miss = (HeightWeight * Math.Max(0, GoodHeightM - height)) + Math.Abs(width - GoodWidthM)
                    + (LengthWeight * (length - width)) + (VolumeWeight * Math.Abs((height / exact) - 1) * 100);
                if (miss < least)
                {
                    (best, least) = (new HeapDimensions(width, length, height), miss);
                }
            }
        }

        return best;
    }

    private static IEnumerable<double> Steps(double from, double to)
    {
        var last = double.NaN;
        for (var i = 0; Math.Round(from + (i * PaceM), 2) <= to; i++)
        {
            yield return last = Math.Round(from + (i * PaceM), 2);
        }

        if (!(last >= to))
        {
            yield return to;
        }
    }
}
