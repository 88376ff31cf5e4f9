namespace HeapText.Service.Startup;

/// <summary>Local prices of fertiliser, by which compost is valued.</summary>
/// <param name="Currency">What a price is counted in, as farmers write it; empty without prices.</param>
/// <param name="PerKg">Price of a kilogram by key of the fertiliser; empty when the office set none.</param>
internal sealed record PriceSettings(string Currency, IReadOnlyDictionary<string, double> PerKg);
