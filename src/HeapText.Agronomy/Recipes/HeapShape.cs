namespace HeapText.Agronomy.Recipes;

/// <summary>
/// Picks how a heap stands: sides a farmer can pace, high enough to keep heat where the volume allows.
/// </summary>
internal static class HeapShape
{
    private const double PaceM = 0.1, GoodHeightM = 1.2, GoodWidthM = 1.5;

    /// <summary>Part of the volume that a height to the centimetre may miss at no cost. Chosen.</summary>
    private const double FreeMiss = 0.007;

    // How much each wish counts, per metre and per part of the volume. Chosen.
    private const double HeightWeight = 4, LengthWeight = 0.2, VolumeWeight = 5;

    /// <summary>Dimensions of a straight-sided heap. [m]</summary>
    /// <param name="litres">Volume, between the bounds <see cref="HeapRoom.LitresOf"/> gives. [L]</param>
    /// <param name="rounds">Rounds of layers, which bound the height.</param>
    /// <param name="room">The room there is.</param>
    /// <remarks>
    /// <code>V = a W L H</code>
    /// V volume [m3]; W, L, H width, length, height [m]; a cover of the rectangle W L, 1 or for a ring π/4. W and L in
    /// steps of 0.1 m unless only a bound or the full height fits, H to the centimetre, so the product meets the volume
    /// within 1 %; of a ring W = L, the diameter.
    /// <para>Source: geometry; straight sides chosen. Bounds: those of the method.</para>
    /// </remarks>
    internal static HeapDimensions Of(double litres, int rounds, HeapRoom room)
    {
        var (low, high) = (HeapRoom.LowestM(rounds), room.HighestM(rounds));
        var best = new HeapDimensions(room.MostWidthM, room.IsRound ? room.MostWidthM : room.MostLengthM, high);
        var least = double.PositiveInfinity;
        foreach (var (width, length) in Bases(litres, high, room))
        {
            var exact = litres / room.Litres(width, length, 1);
            var height = Math.Clamp(Math.Round(exact, 2), Math.Min(low, high), high);
            var off = Math.Max(0, Math.Abs((height / exact) - 1) - FreeMiss);
            var miss = (HeightWeight * Math.Max(0, GoodHeightM - height)) + Math.Abs(width - GoodWidthM)
                + (LengthWeight * (length - width)) + (VolumeWeight * off * 100);
            if (miss < least)
            {
                (best, least) = (new HeapDimensions(width, length, height), miss);
            }
        }

        return best;
    }

    /// <summary>Widths and lengths to try: paced ones, and those that fill the room up to its full height.</summary>
    private static IEnumerable<(double Width, double Length)> Bases(double litres, double high, HeapRoom room)
    {
        if (room.IsRound)
        {
            var filling = Math.Round(Math.Sqrt(litres / room.Litres(1, 1, high)), 2);
            return Steps(room.Bounds.NarrowestM, room.MostWidthM)
                .Append(Math.Clamp(filling, room.Bounds.NarrowestM, room.MostWidthM))
                .Select(diameter => (diameter, diameter));
        }

        return
            from width in Steps(room.Bounds.NarrowestM, room.MostWidthM)
            let filling = Math.Round(litres / room.Litres(width, 1, high), 2)
            from length in Steps(width, room.MostLengthM).Append(Math.Clamp(filling, width, room.MostLengthM))
            select (width, length);
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
