using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;

namespace HeapText.Agronomy.Recipes;

/// <summary>What a household has, and the room for a heap.</summary>
public sealed record RecipeRequest
{
    /// <summary>What is on hand; may be empty, and may name one material in several measures.</summary>
    public required IReadOnlyList<StockItem> Stock { get; init; }

    /// <summary>What each measure holds here.</summary>
    public Measures Measures { get; init; } = Measures.Default;

    /// <summary>The room for the heap.</summary>
    public HeapSpace Space { get; init; } = HeapSpace.Open;

    /// <summary>How the heap is built, which bounds its size.</summary>
    public HeapMethod Method { get; init; } = HeapMethods.Usual;

    /// <summary>Whether to plan further heaps of what the first and its like leave.</summary>
    public bool WithMore { get; init; }

    internal HeapRoom Room => new(Space, Method.Bounds);

    /// <summary>The first fault of this request, by its field in the command line's JSON; or null.</summary>
    public InputFault? Check() => Stock
        .Select((item, i) => item.Check(Measures)?.Within($"stock[{i}]"))
        .FirstOrDefault(fault => fault is not null) ?? Space.Check()?.Within("space");
}

/// <summary>Some of one material on hand.</summary>
/// <param name="Material">Stable key; refused ones are known too.</param>
/// <param name="Amount">0 or more. [measures]</param>
/// <param name="Measure">Stable key, kilograms included.</param>
public sealed record StockItem(string Material, double Amount, string Measure)
{
    /// <summary>Figures measured on the spot, which override the table.</summary>
    public GivenFigures Given { get; init; } = GivenFigures.None;

    internal InputFault? Check(Measures measures) =>
        !MaterialTable.TryFind(Material, out var material) ? new InputFault("material", "is no known material")
        : !measures.IsKnown(Measure) ? new InputFault("measure", "is no known measure")
        : InputFault.OfAmount("amount", Amount) ?? Given.Check() ?? CheckFigures(material);

    private InputFault? CheckFigures(Material material)
    {
        var (composition, fault) = Composition.Resolve(material, Given);
        if (composition is null)
        {
            // What is refused is left out, whatever was given with it.
            return material.IsRefused ? null : fault;
        }

        return composition.Nitrogen.Value == 0 && composition.Carbon.Value == 0 && IsPlantOrDung(material)
            ? new InputFault("nitrogenPercent", "must be above 0 when there is no carbon")
            : null;
    }

    private static bool IsPlantOrDung(Material material) =>
        material.Role is MaterialRole.Brown or MaterialRole.Green or MaterialRole.Manure or MaterialRole.Feed;
}
