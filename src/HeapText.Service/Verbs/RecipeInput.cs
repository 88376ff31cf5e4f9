using HeapText.Agronomy;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Service.Verbs;

/// <summary>What <c>recipe</c> reads.</summary>
internal sealed record RecipeInput(
    IReadOnlyList<StockInput?>? Stock,
    string? Method,
    IReadOnlyDictionary<string, double>? Measures,
    SpaceInput? Space)
{
    internal InputFault? Check()
    {
        if (Stock is null)
        {
            return new InputFault("stock", "must be given; it may be empty");
        }

        for (var i = 0; i < Stock.Count; i++)
        {
            var missing = Stock[i]?.Material is null ? "material"
                : Stock[i]!.Amount is null ? "amount"
                : Stock[i]!.Measure is null ? "measure"
                : null;
            if (missing is not null)
            {
                return new InputFault($"stock[{i}].{missing}", "must be given");
            }
        }

        if (Method is not null && !HeapMethods.All.ContainsKey(Method))
        {
            return new InputFault("method", "is no known method");
        }

        return Measures is null ? null : Agronomy.Materials.Measures.Default.Check(Measures)?.Within("measures");
    }

    internal RecipeRequest ToRequest() => new()
    {
        Stock = [.. Stock!.Select(item => item!.ToItem())],
        Measures = Measures is null
            ? Agronomy.Materials.Measures.Default
            : Agronomy.Materials.Measures.Default.With(Measures),
        Method = Method is null ? HeapMethods.Usual : HeapMethods.All[Method],
        WithMore = true,
        Space = Space is null ? HeapSpace.Open : new HeapSpace(Space.WidthM, Space.LengthM, Space.HeightM),
    };
}

/// <summary>Some of one material; a given figure overrides the table.</summary>
internal sealed record StockInput(
    string? Material,
    double? Amount,
    string? Measure,
    double? CarbonPercent,
    double? NitrogenPercent,
    double? Cn,
    double? MoisturePercent,
    double? DensityKgPerM3)
{
    internal StockItem ToItem() => new(Material!, Amount!.Value, Measure!)
    {
        Given = new GivenFigures
        {
            CarbonPercent = CarbonPercent,
            NitrogenPercent = NitrogenPercent,
            CarbonNitrogen = Cn,
            MoisturePercent = MoisturePercent,
            DensityKgPerM3 = DensityKgPerM3,
        },
    };
}

/// <summary>The room for the heap.</summary>
internal sealed record SpaceInput(double? WidthM, double? LengthM, double? HeightM);
