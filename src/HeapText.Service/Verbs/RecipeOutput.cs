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

    public required IReadOnlyList<AmountOutput> Unused { get; init; }

    public required IReadOnlyList<MissingOutput> Missing { get; init; }

    public double WaterLitres { get; init; }

    public double WaterPerRoundLitres { get; init; }

    public double VolumeLitres { get; init; }

    /// <summary>After watering.</summary>
    public double MassKg { get; init; }

    public double? Cn { get; init; }

    /// <summary>After watering.</summary>
    public double? MoisturePercent { get; init; }

    public HeapDimensions Dimensions { get; init; } = new(0, 0, 0);

    public int Heaps { get; init; }

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
            Missing = [.. result.Missing.Select(MissingOutput.From)],
            Cautions = result.Cautions,
            Notes = result.Notes,
        };
        return result switch
        {
            RecipeResult.Solved(var recipe) => bare.With(recipe),
            RecipeResult.NoHeap => bare,
            _ => throw new UnreachableException(),
        };
    }

    private RecipeOutput With(Recipe recipe) => this with
    {
        Rounds = recipe.Rounds,
        PerRound =
        [
            .. recipe.PerRound.Select(layer => new AmountOutput(layer.Material, layer.Amount, layer.Measure)),
        ],
        Total = [.. recipe.Total.Select(AmountOutput.From)],
        WaterLitres = recipe.Water.Litres,
        WaterPerRoundLitres = recipe.WaterPerRound.Litres,
        VolumeLitres = recipe.Volume.Litres,
        MassKg = recipe.Mass.Kilograms,
        Cn = recipe.CarbonNitrogen,
        MoisturePercent = recipe.Moisture.Percent,
        Dimensions = recipe.Dimensions,
        Heaps = recipe.Heaps,
        Layers = [.. recipe.PerRound.Select(layer => layer.Material).Distinct(), "water", "cover"],
    };
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
