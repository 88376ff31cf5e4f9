namespace HeapText.Agronomy.Recipes;

/// <summary>The room there is for a heap; what is not given is not bounded beyond the usual.</summary>
/// <param name="WidthM">Above 0. [m]</param>
/// <param name="LengthM">Above 0. [m]</param>
/// <param name="HeightM">Above 0. [m]</param>
public sealed record HeapSpace(double? WidthM = null, double? LengthM = null, double? HeightM = null)
{
    /// <summary>Room enough for any heap.</summary>
    public static HeapSpace Open { get; } = new();

    internal double MostLengthM => Math.Min(HeapLimits.LongestM, LengthM ?? HeapLimits.LongestM);

    internal double MostWidthM =>
        Math.Min(MostLengthM, Math.Min(HeapLimits.WidestM, WidthM ?? HeapLimits.WidestM));

    internal static double LowestM(int rounds) => rounds * HeapLimits.LowestRoundM;

    internal double HighestM(int rounds) => Math.Min(
        rounds * HeapLimits.HighestRoundM, Math.Min(HeapLimits.HighestM, HeightM ?? HeapLimits.HighestM));

    /// <summary>Least and most volume of a heap of so many rounds that fits here, or null when none fits. [L]</summary>
    internal (double Least, double Most)? LitresOf(int rounds)
    {
        const double litresPerM3 = 1000;
        var least = HeapLimits.NarrowestM * HeapLimits.NarrowestM * LowestM(rounds) * litresPerM3;
        var most = MostWidthM * MostLengthM * HighestM(rounds) * litresPerM3;
        least = Math.Max(HeapLimits.LeastLitres, least);
        return MostWidthM >= HeapLimits.NarrowestM && HighestM(rounds) >= LowestM(rounds) - Rounding && most >= least
            ? (least, most)
            : null;
    }

    internal InputFault? Check() =>
        CheckOne("widthM", WidthM) ?? CheckOne("lengthM", LengthM) ?? CheckOne("heightM", HeightM);

    private static InputFault? CheckOne(string field, double? metres) =>
        metres is null or (> 0 and <= LargestM)
            ? null
            : new InputFault(field, "must be above 0 and at most 1000 metres");

    private const double LargestM = 1000;
    private const double Rounding = 1e-9;
}
