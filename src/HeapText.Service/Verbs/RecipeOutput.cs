using System.Diagnostics;
using System.Text.Json;
using HeapText.Agronomy.Recipes;

namespace HeapText.Service.Verbs;

/// <summary>What <c>recipe</c> writes: every property always, noughts and nulls when there is no heap.</summary>
internal sealed record RecipeOutput
{
    public required bool Feasible { get; init; }

    public int Rounds { get; init; }

    public IReadOnlyList<AmountOutput> PerRound { get; init; } = [];

    public IReadOnlyList<AmountOutput> Total { get; init; } = [];

    /// <summary>What one heap leaves.</summary>
    public required IReadOnlyList<AmountOutput> Unused { get; init; }

    public required IReadOnlyList<MissingOutput> Missing { get; init; }

    public double WaterLitres { get; init; }

    public double WaterPerRoundLitres { get; init; }

    public double VolumeLitres { get; init; }

    /// <summary>After watering.</summary>
    public double MassKg { get; init; }

    public double? Cn { get; init; }

    /// <summary>C/N as the materials vary: all low.</summary>
    public double? CnLow { get; init; }

    /// <summary>C/N as the materials vary: all high.</summary>
    public double? CnHigh { get; init; }

    /// <summary>After watering.</summary>
    public double? MoisturePercent { get; init; }

    public HeapDimensions Dimensions { get; init; } = new(0, 0, 0);

    /// <summary>How many of this very heap the stock allows.</summary>
    public int Heaps { get; init; }

    /// <summary>Different heaps after those.</summary>
    public IReadOnlyList<HeapOutput> More { get; init; } = [];

    /// <summary>What all heaps leave.</summary>
    public required IReadOnlyList<AmountOutput> Left { get; init; }

    /// <summary>One round in building order, with water and at last the cover.</summary>
    public IReadOnlyList<string> Layers { get; init; } = [];

    public required IReadOnlyList<string> Cautions { get; init; }

    public required IReadOnlyList<string> Notes { get; init; }

    internal static RecipeOutput From(RecipeResult result)
    {
        var bare = new RecipeOutput
        {
            Feasible = result is RecipeResult.Solved,
            Unused = [.. result.Unused.Select(AmountOutput.From)],
            Left = [.. result.Unused.Select(AmountOutput.From)],
            Missing = [.. result.Missing.Select(MissingOutput.From)],
            Cautions = result.Cautions,
            Notes = result.Notes,
        };
        return result switch
        {
            RecipeResult.Solved solved => bare.With(HeapOutput.From(solved.Recipe)) with
            {
                More = [.. solved.More.Select(HeapOutput.From)],
                Left = [.. solved.Left.Select(AmountOutput.From)],
            },
            RecipeResult.NoHeap => bare,
            _ => throw new UnreachableException(),
        };
    }

    private RecipeOutput With(HeapOutput heap) => this with
    {
        Rounds = heap.Rounds,
        PerRound = heap.PerRound,
        Total = heap.Total,
        WaterLitres = heap.WaterLitres,
        WaterPerRoundLitres = heap.WaterPerRoundLitres,
        VolumeLitres = heap.VolumeLitres,
        MassKg = heap.MassKg,
        Cn = heap.Cn,
        CnLow = heap.CnLow,
        CnHigh = heap.CnHigh,
        MoisturePercent = heap.MoisturePercent,
        Dimensions = heap.Dimensions,
        Heaps = heap.Heaps,
        Layers = [.. heap.PerRound.Select(layer => layer.Material).Distinct(), "water", "cover"],
    };
}

/// <summary>One heap; mass and moisture after watering.</summary>
internal sealed record HeapOutput(
    int Rounds,
    IReadOnlyList<AmountOutput> PerRound,
    IReadOnlyList<AmountOutput> Total,
    double WaterLitres,
    double WaterPerRoundLitres,
    double VolumeLitres,
    double MassKg,
    double Cn,
    double CnLow,
    double CnHigh,
    double MoisturePercent,
    HeapDimensions Dimensions,
    int Heaps)
{
    internal static HeapOutput From(Recipe recipe) => new(
        recipe.Rounds,
        [.. recipe.PerRound.Select(layer => new AmountOutput(layer.Material, layer.Amount, layer.Measure))],
        [.. recipe.Total.Select(AmountOutput.From)],
        recipe.Water.Litres,
        recipe.WaterPerRound.Litres,
        recipe.Volume.Litres,
        recipe.Mass.Kilograms,
        recipe.CarbonNitrogen,
        recipe.CarbonNitrogenRange.Low,
        recipe.CarbonNitrogenRange.High,
        recipe.Moisture.Percent,
        recipe.Dimensions,
        recipe.Heaps);
}

/// <summary>Some of one material.</summary>
internal sealed record AmountOutput(string Material, double Amount, string Measure)
{
    internal static AmountOutput From(StockItem item) => new(item.Material, item.Amount, item.Measure);
}

/// <summary>Something to bring in addition to the stock.</summary>
internal sealed record MissingOutput(
    string Material, string Role, double Amount, string Measure, string Why, IReadOnlyList<string> Substitutes)
{
    internal static MissingOutput From(Missing missing) => new(
        missing.Material,
        JsonNamingPolicy.KebabCaseLower.ConvertName(missing.Role.ToString()),
        missing.Amount,
        missing.Measure,
        JsonNamingPolicy.KebabCaseLower.ConvertName(missing.Why.ToString()),
        missing.Substitutes);
}
