namespace HeapText.Agronomy.Recipes;

/// <summary>The room there is for a heap; what is not given is not bounded beyond the usual.</summary>
/// <param name="WidthM">Above 0. [m]</param>
/// <param name="LengthM">Above 0. [m]</param>
/// <param name="HeightM">Above 0; of a pit, its depth. [m]</param>
public sealed record HeapSpace(double? WidthM = null, double? LengthM = null, double? HeightM = null)
{
    private const double LargestM = 1000;

    /// <summary>Room enough for any heap.</summary>
    public static HeapSpace Open { get; } = new();

    internal InputFault? Check() =>
        CheckOne("widthM", WidthM) ?? CheckOne("lengthM", LengthM) ?? CheckOne("heightM", HeightM);

    private static InputFault? CheckOne(string field, double? metres) =>
        metres is null or (> 0 and <= LargestM)
            ? null
            : new InputFault(field, "must be above 0 and at most 1000 metres");
}
