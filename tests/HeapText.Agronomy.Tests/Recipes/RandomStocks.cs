using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>Stocks as a household might have them: 2 to 12 materials in any measures, from scraps to plenty.</summary>
internal static class RandomStocks
{
    private static readonly Material[] Known = [.. MaterialTable.All.Where(material => material.Figures is not null)];

    private static readonly string[] Bulk =
        ["wheelbarrow", "sack", "small-sack", "headload", "basin", "bucket", "kg", "ox-cart", "armful"];

    private static readonly string[] Little =
        ["bucket", "small-bucket", "basin", "kg", "jerrycan", "shovel", "litre", "handful"];

    internal static StockItem[] Next(Random random)
    {
        Material[] shuffled = [.. Known];
        random.Shuffle(shuffled);
        var most = random.Next(3) == 0 ? 6 : 31;
        return [.. shuffled.Take(random.Next(2, 13)).Select(material => Item(material, most, random))];
    }

    private static StockItem Item(Material material, int most, Random random)
    {
        var isBulk = material.Role is MaterialRole.Brown or MaterialRole.Green or MaterialRole.Manure;
        var measures = isBulk ? Bulk : Little;
        var measure = measures[random.Next(measures.Length)];
        var amount = measure switch
        {
            "kg" => random.Next(5, 20 * most),
            "ox-cart" => random.Next(1, 4),
            _ => random.Next(1, most),
        };
        return new StockItem(material.Key, amount + (random.Next(5) == 0 ? 0.5 : 0), measure);
    }
}
