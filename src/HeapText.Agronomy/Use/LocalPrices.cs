namespace HeapText.Agronomy.Use;

/// <summary>What fertiliser costs in a district.</summary>
/// <param name="Currency">As farmers write it; empty without prices.</param>
/// <param name="PerKg">Price of a kilogram, by key of the fertiliser. [local money/kg]</param>
public sealed record LocalPrices(string Currency, IReadOnlyDictionary<string, double> PerKg)
{
    /// <summary>No price is known.</summary>
    public static LocalPrices None { get; } = new("", new Dictionary<string, double>());
}
