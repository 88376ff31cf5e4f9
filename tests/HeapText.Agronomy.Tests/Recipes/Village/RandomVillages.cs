using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Recipes.Village;

namespace HeapText.Agronomy.Tests.Recipes.Village;

/// <summary>
/// Villages whose households have a few loads each, most of them too few or too much alike for a heap.
/// </summary>
internal static class RandomVillages
{
    private static readonly (string Material, string Measure, int Most)[] Loads =
    [
        ("rice-straw", "ox-cart", 2),
        ("bean-haulm", "donkey-cart", 2),
        ("dry-grass", "headload", 3),
        ("green-weeds", "headload", 3),
        ("lantana", "donkey-cart", 2),
        ("goat-manure", "sack", 3),
        ("cow-dung", "sack", 2),
        ("poultry-litter", "small-sack", 3),
        ("water-hyacinth", "headload", 3),
    ];

    /// <summary>So many households that share so many goods of few whole measures.</summary>
    internal static VillageRequest Few(Random random, int households, int goods)
    {
        var loads = Loads.ToArray();
        random.Shuffle(loads);
        return Of(households, i => loads.Take(goods).Where(_ => random.Next(2) == 0)
            .Select(load => new StockItem(load.Material, random.Next(1, load.Most + 1), load.Measure)));
    }

    /// <summary>So many households, each with two to four materials in small measures.</summary>
    internal static VillageRequest Many(Random random, int households) => Of(households, _ =>
    {
        string[] materials =
        [
            "rice-straw", "bean-haulm", "banana-leaf-dry", "lantana", "water-hyacinth", "banana-stem", "goat-manure",
            "cow-dung", "poultry-litter", "wood-ash", "rice-bran", "plastic",
        ];
        random.Shuffle(materials);
        string[] measures = ["wheelbarrow", "wheelbarrow", "sack", "bucket"];
        return materials.Take(random.Next(2, 5)).Select(material => new StockItem(
            material, random.Next(1, 24) / 2.0, measures[random.Next(measures.Length)]));
    });

    private static VillageRequest Of(int households, Func<int, IEnumerable<StockItem>> stock) => new()
    {
        Households = [.. Enumerable.Range(1, households).Select(i => new HouseholdStock($"house {i}", [.. stock(i)]))],
    };
}
