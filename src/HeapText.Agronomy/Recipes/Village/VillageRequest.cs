using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes.Village;

/// <summary>What the households of a village have.</summary>
public sealed record VillageRequest
{
    /// <summary>The households, each by a name of its own; may be none.</summary>
    public required IReadOnlyList<HouseholdStock> Households { get; init; }

    /// <summary>What each measure holds here.</summary>
    public Measures Measures { get; init; } = Measures.Default;

    /// <summary>The room each household has for a heap.</summary>
    public HeapSpace Space { get; init; } = HeapSpace.Open;

    /// <summary>How the heaps are built.</summary>
    public HeapMethod Method { get; init; } = HeapMethods.Usual;

    /// <summary>The first fault of this request, by its field in the command line's JSON; or null.</summary>
    public InputFault? Check()
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < Households.Count; i++)
        {
            var fault = names.Add(Households[i].Name) ? RequestOf(Households[i].Stock).Check()
                : new InputFault("name", "is given twice");
            if (fault is not null)
            {
                var isShared = fault.Field.StartsWith("space.", StringComparison.Ordinal);
                return isShared ? fault : fault.Within($"village[{i}]");
            }
        }

        return Space.Check()?.Within("space");
    }

    internal RecipeRequest RequestOf(IReadOnlyList<StockItem> stock) => new()
    {
        Stock = stock,
        Measures = Measures,
        Space = Space,
        Method = Method,
        WithMore = true,
    };
}

/// <summary>What one household has.</summary>
/// <param name="Name">What it is called in the plan.</param>
/// <param name="Stock">As in <see cref="RecipeRequest.Stock"/>.</param>
public sealed record HouseholdStock(string Name, IReadOnlyList<StockItem> Stock);
