using HeapText.Agronomy.Recipes;

namespace HeapText.Benchmarks.Recipes;

/// <summary>Stocks of the invented district: ordinary ones of a small farm, and ones that make no heap.</summary>
internal static class NamedStocks
{
    // A barrow or two of each bulky thing, as a farm has it that has not saved up for a heap.
    private static readonly StockItem[] Farm =
    [
        new("rice-straw", 14, "wheelbarrow"),
        new("lantana", 6, "wheelbarrow"),
        new("goat-manure", 5, "bucket"),
        new("wood-ash", 2, "bucket"),
        new("bean-haulm", 9, "sack"),
        new("cow-dung", 7, "bucket"),
        new("rice-bran", 1.5, "bucket"),
        new("termite-soil", 4, "bucket"),
        new("banana-leaf-dry", 6, "armful"),
        new("banana-stem", 5, "wheelbarrow"),
        new("water-hyacinth", 4, "basin"),
        new("poultry-litter", 60, "kg"),
    ];

    internal static IReadOnlyList<StockItem> Of(string name) => name switch
    {
        "typical-4" => Farm[..4],
        "typical-8" => Farm[..8],
        "typical-12" => Farm,
        "tight-12" => [.. Farm.Select(item => item with { Amount = item.Amount / 3 })],
        "too-wet" => [new("vegetable-waste", 10, "wheelbarrow"), new("green-weeds", 20, "wheelbarrow")],
        "only-brown" => [new("rice-straw", 30, "wheelbarrow"), new("maize-stover", 20, "wheelbarrow")],
        "empty" => [],
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "is no named stock"),
    };
}
