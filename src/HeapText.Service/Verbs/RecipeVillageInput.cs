using HeapText.Agronomy;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Service.Verbs;

/// <summary>One household of the village that <c>recipe</c> reads instead of a stock.</summary>
internal sealed record HouseholdInput(string? Name, IReadOnlyList<StockInput?>? Stock)
{
    internal InputFault? Check() =>
        string.IsNullOrWhiteSpace(Name) ? new InputFault("name", "must be given")
        : Stock is null ? new InputFault("stock", "must be given; it may be empty")
        : StockInput.Check(Stock);

    internal HouseholdStock ToHousehold() => new(Name!, [.. Stock!.Select(item => item!.ToItem())]);
}
