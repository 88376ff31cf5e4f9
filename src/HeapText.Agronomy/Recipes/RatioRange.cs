namespace HeapText.Agronomy.Recipes;

/// <summary>C/N of a heap at the ends of what its materials vary. [kg C / kg N]</summary>
/// <param name="Low">All materials low.</param>
/// <param name="High">All materials high.</param>
/// <remarks>
/// <code>min, max over the readings of  Σ C / Σ N</code>
/// C, N as <see cref="VariedFood"/> gives them. The ratio rises with the C/N of each material, by either reading, so
/// the ends are exact when the materials vary independently and all are read alike.
/// <para>Source: derived. Checked against: random draws in the tests.</para>
/// </remarks>
public sealed record RatioRange(double Low, double High)
{
    /// <summary>Points by which the range passes 20-40; 0 when it stays inside.</summary>
    internal double Overshoot => Math.Max(0, Math.Max(
        HeapLimits.LeastVariedCarbonNitrogen - Low, High - HeapLimits.MostVariedCarbonNitrogen));

    /// <summary>Keys of the notes this range asks for.</summary>
    internal IEnumerable<string> Notes()
    {
        if (Low < HeapLimits.LeastVariedCarbonNitrogen)
        {
            yield return Recipes.Notes.CarbonNitrogenUncertainLow;
        }

        if (High > HeapLimits.MostVariedCarbonNitrogen)
        {
            yield return Recipes.Notes.CarbonNitrogenUncertainHigh;
        }
    }
}
