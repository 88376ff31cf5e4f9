using System.Text.Json;
using System.Text.Json.Serialization;
using HeapText.Agronomy;
using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Service.Verbs;

/// <summary>A heap as <c>recipe</c> writes it; its other properties are read past.</summary>
internal record ForecastHeapInput
{
    private static readonly HashSet<string> Written = [.. typeof(RecipeOutput).GetProperties()
        .Select(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name))];

    public bool? Feasible { get; init; }

    public IReadOnlyList<StockInput?>? Total { get; init; }

    public double? WaterLitres { get; init; }

    public double? VolumeLitres { get; init; }

    public double? MassKg { get; init; }

    public double? MoisturePercent { get; init; }

    public HeapDimensions? Dimensions { get; init; }

    [JsonExtensionData]
    public IDictionary<string, JsonElement>? Others { get; init; }

    internal InputFault? CheckUnknown() => Others?.Keys
        .Where(key => !Written.Contains(key))
        .Select(key => new InputFault(key, "is no known property"))
        .FirstOrDefault();

    internal (IReadOnlyList<ForecastPart>?, InputFault?) ReadTotal()
    {
        if (Feasible == false)
        {
            return (null, new InputFault("feasible", "must be true: this recipe builds no heap"));
        }

        if (Total is null or []
            || Total.Any(item => item is not { Material: not null, Amount: not null, Measure: not null }))
        {
            return (null, new InputFault("total", "must list material, amount and measure of every part"));
        }

        var (parts, fault) = ForecastParts.Measured([.. Total.Select(item => item!.ToItem())], Measures.Default);
        return fault is not null ? (null, fault with { Field = $"total{fault.Field}" })
            : MassKg is { } mass && MoisturePercent is { } moisture
                ? ForecastParts.Matching(parts!, WaterLitres ?? 0, mass, moisture)
                : (parts, null);
    }
}
