using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Mixing;

/// <summary>Some of one material.</summary>
/// <param name="Fresh">Mass as it is. [kg]</param>
/// <param name="Composition">What it is made of.</param>
/// <param name="IsFood">Whether microbes can eat its carbon and nitrogen; false for charcoal.</param>
internal sealed record Portion(Mass Fresh, Composition Composition, bool IsFood)
{
    internal Mass Dry => Fresh * Composition.Moisture.Rest();

    internal Mass Carbon => IsFood ? Dry * Composition.Carbon : Mass.Zero;

    internal Mass Nitrogen => IsFood ? Dry * Composition.Nitrogen : Mass.Zero;
}
