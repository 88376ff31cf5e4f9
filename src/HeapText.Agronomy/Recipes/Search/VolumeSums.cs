using System.Numerics;

namespace HeapText.Agronomy.Recipes.Search;

/// <summary>What volumes whole numbers of measures can add up to, the other limits aside.</summary>
internal static class VolumeSums
{
    private const double Rounding = 1e-7;
    private const int MostGrains = 60_000;

    /// <summary>
    /// The largest sum up to a bound, or the bound itself where the measures have too little in common.
    /// </summary>
    /// <param name="most">Bound. [L]</param>
    /// <param name="litres">Volume of each measure. [L]</param>
    /// <param name="counts">Most whole measures of each.</param>
    internal static double MostUpTo(double most, double[] litres, double[] counts)
    {
        var grain = Grain(litres);
        if (grain == 0 || most / grain > MostGrains)
        {
            return most;
        }

        // Bit s of the sums is set when s grains can be made; doubling steps take any count in few shifts.
        var bound = (int)Math.Floor((most / grain) + Rounding);
        var within = (BigInteger.One << (bound + 1)) - 1;
        var sums = BigInteger.One;
        for (var j = 0; j < litres.Length; j++)
        {
            var size = (int)Math.Min(bound + 1, Math.Round(litres[j] / grain));
            var left = size == 0 ? 0 : (int)Math.Min(counts[j], bound / size);
            for (var step = 1; left > 0; step *= 2)
            {
                var take = Math.Min(step, left);
                sums = (sums | (sums << (take * size))) & within;
                left -= take;
            }
        }

        return Math.Min(most, (double)(sums.GetBitLength() - 1) * grain);
    }

    /// <summary>The largest volume of which every measure is a multiple; 0 when there is none. [L]</summary>
    internal static double Grain(double[] litres) => litres.Where(volume => volume > 0).Aggregate(0.0, InCommon);

    /// <summary>Euclid's greatest common measure of two volumes, within rounding.</summary>
    private static double InCommon(double first, double second)
    {
        while (second > Rounding)
        {
            (first, second) = (second, first - (second * Math.Floor((first / second) + Rounding)));
        }

        return first;
    }
}
