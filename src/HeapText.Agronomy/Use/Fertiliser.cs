using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Use;

/// <summary>A mineral fertiliser and what its bag says it holds.</summary>
/// <param name="Key">Stable key, kebab case.</param>
/// <param name="Nitrogen">Nitrogen. [kg N / kg]</param>
/// <param name="Phosphate">Phosphorus, counted as P2O5 as on the bag. [kg P2O5 / kg]</param>
/// <param name="Potash">Potassium, counted as K2O as on the bag. [kg K2O / kg]</param>
/// <param name="Source">Where the grade comes from.</param>
/// <param name="Confidence">How sure: C from memory.</param>
public sealed record Fertiliser(
    string Key, Fraction Nitrogen, Fraction Phosphate, Fraction Potash, string Source, string Confidence)
{
    /// <summary>Phosphorus in its oxide. [kg P / kg P2O5] Derived from atomic masses.</summary>
    public static Fraction PhosphorusInPhosphate { get; } = Fraction.FromValue(0.4364);

    /// <summary>Potassium in its oxide. [kg K / kg K2O] Derived from atomic masses.</summary>
    public static Fraction PotassiumInPotash { get; } = Fraction.FromValue(0.8301);

    /// <summary>Phosphorus itself. [kg P / kg]</summary>
    public Fraction Phosphorus => Phosphate * PhosphorusInPhosphate;

    /// <summary>Potassium itself. [kg K / kg]</summary>
    public Fraction Potassium => Potash * PotassiumInPotash;

    /// <summary>Whether its price pays for more than nitrogen.</summary>
    public bool IsCompound => Phosphate.Value > 0 || Potash.Value > 0;

    /// <summary>How much of it carries some nitrogen. [kg]</summary>
    public Mass CarryingNitrogen(Mass nitrogen) => Mass.FromKilograms(nitrogen.Kilograms / Nitrogen.Value);
}
