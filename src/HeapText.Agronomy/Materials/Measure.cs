using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Materials;

/// <summary>A local measure and the volume it usually holds.</summary>
/// <param name="Key">Stable key, kebab case.</param>
/// <param name="Volume">What one holds. [L]</param>
/// <param name="Source">Where the figure comes from.</param>
/// <param name="Confidence">A read or by definition; C from memory; D weak estimate.</param>
public sealed record Measure(string Key, Volume Volume, string Source, string Confidence);
