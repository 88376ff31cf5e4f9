using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>The numbered path through the stock: one menu a role, the commonest materials of the role in it.</summary>
public static class StepByStep
{
    private static readonly (MessageSpec Question, string[] Materials)[] Menus =
    [
        (Catalogue.PickBrown, ["maize-stover", "dry-grass", "dry-leaves", "rice-straw", "bean-haulm"]),
        (Catalogue.PickGreen, ["green-weeds", "fresh-grass", "napier-grass", "tithonia", "banana-stem"]),
        (Catalogue.PickManure, ["cow-dung", "goat-manure", "poultry-manure", "sheep-manure", "pig-manure"]),
        (Catalogue.PickEarth, ["topsoil", "old-compost"]),
        (Catalogue.PickExtra, ["wood-ash", "charcoal", "maize-bran", "rice-bran", "rock-dust"]),
    ];

    /// <summary>How many menus there are.</summary>
    public static int Count => Menus.Length;

    /// <summary>Measures offered when a number came without one.</summary>
    public static IReadOnlyList<string> Measures { get; } = ["wheelbarrow", "bucket", "sack", "basin"];

    /// <summary>The question of a step and the materials it offers.</summary>
    public static (MessageSpec Question, IReadOnlyList<string> Materials) Menu(int step) => Menus[step];

    /// <summary>The materials that a menu question offers.</summary>
    public static IReadOnlyList<string> MenuOf(MessageSpec question) =>
        Menus.Single(menu => menu.Question == question).Materials;
}
