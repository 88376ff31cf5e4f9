using HeapText.Agronomy;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Service.Verbs;

/// <summary>What <c>recipe</c> reads: one stock, or those of a village.</summary>
internal sealed record RecipeInput(
    IReadOnlyList<StockInput?>? Stock,
    IReadOnlyList<HouseholdInput?>? Village,
    string? Method,
    IReadOnlyDictionary<string, double>? Measures,
    SpaceInput? Space)
{
    private Measures OwnMeasures => Measures is null
        ? Agronomy.Materials.Measures.Default
        : Agronomy.Materials.Measures.Default.With(Measures);

    private HeapSpace Room =>
        Space is null ? HeapSpace.Open : new HeapSpace(Space.WidthM, Space.LengthM, Space.HeightM);

    private HeapMethod HeapMethod => Method is null ? HeapMethods.Usual : HeapMethods.All[Method];

    internal InputFault? Check() =>
        (Stock, Village) switch
        {
            (null, null) => new InputFault("stock", "must be given; it may be empty"),
            (not null, not null) => new InputFault("village", "must not be given with stock"),
            (null, _) => CheckVillage(),
            _ => StockInput.Check(Stock),
        }
        ?? (Method is not null && !HeapMethods.All.ContainsKey(Method)
            ? new InputFault("method", "is no known method") : null)
        ?? (Measures is null ? null : Agronomy.Materials.Measures.Default.Check(Measures)?.Within("measures"));

    internal RecipeRequest ToRequest() => new()
    {
        Stock = [.. Stock!.Select(item => item!.ToItem())],
        Measures = OwnMeasures,
        Method = HeapMethod,
        WithMore = true,
        Space = Room,
    };

    internal VillageRequest ToVillage() => new()
    {
        Households = [.. Village!.Select(household => household!.ToHousehold())],
        Measures = OwnMeasures,
        Method = HeapMethod,
        Space = Room,
    };

    private InputFault? CheckVillage() => Village!
        .Select((household, i) => (household is null ? new InputFault("name", "must be given") : household.Check())
            ?.Within($"village[{i}]"))
        .FirstOrDefault(fault => fault is not null);
}

/// <summary>Some of one material; a given figure overrides the table.</summary>
internal sealed record StockInput(string? Material, double? Amount, string? Measure) : PiledFiguresInput
{
    /// <summary>The first entry of a stock that lacks something, or null.</summary>
    internal static InputFault? Check(IReadOnlyList<StockInput?> stock)
    {
        for (var i = 0; i < stock.Count; i++)
        {
            var missing = stock[i]?.Material is null ? "material"
                : stock[i]!.Amount is null ? "amount"
                : stock[i]!.Measure is null ? "measure"
                : null;
            if (missing is not null)
            {
                return new InputFault($"stock[{i}].{missing}", "must be given");
            }
        }

        return null;
    }

    internal StockItem ToItem() => new(Material!, Amount!.Value, Measure!) { Given = Given };
}

/// <summary>The room for the heap.</summary>
internal sealed record SpaceInput(double? WidthM, double? LengthM, double? HeightM);
