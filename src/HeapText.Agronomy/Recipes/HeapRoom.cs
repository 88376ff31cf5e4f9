using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Recipes;

/// <summary>How big a heap may be: what its method allows, in the space there is.</summary>
internal sealed record HeapRoom(HeapSpace Space, HeapBounds Bounds)
{
    private const double Rounding = 1e-9;

    internal bool IsRound => Bounds.Form == HeapForm.Ring;

    internal double MostLengthM => Math.Min(Bounds.LongestM, Space.LengthM ?? Bounds.LongestM);

    internal double MostWidthM => Math.Min(MostLengthM, Math.Min(Bounds.WidestM, Space.WidthM ?? Bounds.WidestM));

    /// <summary>Whether a heap of any number of rounds fits.</summary>
    internal bool FitsAny() =>
        Enumerable.Range(HeapLimits.FewestRounds, HeapLimits.MostRounds - HeapLimits.FewestRounds + 1)
            .Any(rounds => LitresOf(rounds) is not null);

    internal static double LowestM(int rounds) => rounds * HeapLimits.LowestRoundM;

    internal double HighestM(int rounds) => Math.Min(
        rounds * HeapLimits.HighestRoundM, Math.Min(Bounds.HighestM, Space.HeightM ?? Bounds.HighestM));

    /// <summary>Volume of a heap so wide, long and high; a ring's width and length are its diameter. [L]</summary>
    internal double Litres(double widthM, double lengthM, double heightM)
    {
        const double litresPerM3 = 1000;
        return Bounds.Cover * widthM * lengthM * heightM * litresPerM3;
    }

    /// <summary>Least and most volume of a heap of so many rounds that fits here, or null when none fits. [L]</summary>
    internal (double Least, double Most)? LitresOf(int rounds)
    {
        var longest = IsRound ? MostWidthM : MostLengthM;
        var least = Math.Max(Bounds.LeastLitres, Litres(Bounds.NarrowestM, Bounds.NarrowestM, LowestM(rounds)));
        var most = Litres(MostWidthM, longest, HighestM(rounds));
        var stands = MostWidthM >= Bounds.NarrowestM && HighestM(rounds) >= LowestM(rounds) - Rounding;
        return stands && most >= least ? (least, most) : null;
    }
}
