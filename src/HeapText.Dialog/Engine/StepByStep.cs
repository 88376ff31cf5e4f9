using HeapText.Agronomy.Materials;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>The numbered path through the stock: one menu a role, the commonest materials of the role first.</summary>
public static class StepByStep
{
    /// <summary>Measures and materials that a text can offer; a paged screen offers all.</summary>
    private const int MostInText = 5;
    private const int MostMeasuresInText = 4;

    private static readonly (MessageSpec Question, string[] Materials)[] Menus =
    [
        (Catalogue.PickBrown, ["maize-stover", "dry-grass", "dry-leaves", "rice-straw", "bean-haulm"]),
        (Catalogue.PickGreen, ["green-weeds", "fresh-grass", "napier-grass", "tithonia", "banana-stem"]),
        (Catalogue.PickManure, ["cow-dung", "goat-manure", "poultry-manure", "sheep-manure", "pig-manure"]),
        (Catalogue.PickEarth, ["topsoil", "old-compost"]),
        (Catalogue.PickExtra, ["wood-ash", "charcoal", "maize-bran", "rice-bran", "rock-dust"]),
    ];

    private static readonly (MaterialRole Role, MessageSpec Question, string[] Commonest)[] ByRole =
    [
        (MaterialRole.Brown, Menus[0].Question, Menus[0].Materials),
        (MaterialRole.Green, Menus[1].Question, Menus[1].Materials),
        (MaterialRole.Manure, Menus[2].Question, Menus[2].Materials),
        (MaterialRole.Earth, Menus[3].Question, Menus[3].Materials),
        (MaterialRole.Mineral, Catalogue.PickMineral, ["wood-ash", "rock-dust", "lime", "eggshell"]),
        (MaterialRole.Charcoal, Catalogue.PickMineral, ["charcoal"]),
        (MaterialRole.Feed, Catalogue.PickFeed, ["maize-bran", "rice-bran", "wheat-bran", "molasses"]),
    ];

    private static readonly string[] CommonMeasures = ["wheelbarrow", "bucket", "sack", "basin"];

    private static readonly string[] AllMeasures =
    [
        .. CommonMeasures,
        .. Measures.Default.All.Select(measure => measure.Key).Append(Measures.Kilogram).Except(CommonMeasures),
    ];

    /// <summary>How many menus there are.</summary>
    public static int Count => Menus.Length;

    /// <summary>The roles in the order in which they are offered.</summary>
    public static IReadOnlyList<MaterialRole> Roles { get; } = [.. ByRole.Select(menu => menu.Role)];

    /// <summary>Measures that a text offers when a number came without one, before they are put in order.</summary>
    public static IReadOnlyList<string> MeasuresInText => CommonMeasures;

    /// <summary>All measures of a material, the usual one first. A text offers the first few, by the same
    /// numbers.</summary>
    public static IReadOnlyList<string> MeasuresOf(string material) =>
        [UsualMeasure(material), .. AllMeasures.Where(measure => measure != UsualMeasure(material))];

    /// <summary>The measures of a material as they are offered.</summary>
    public static IReadOnlyList<string> MeasuresOffered(string material, bool onScreen) =>
        onScreen ? MeasuresOf(material) : [.. MeasuresOf(material).Take(MostMeasuresInText)];

    /// <summary>The measure meant when none is said: bulky plants go by the wheelbarrow, the rest by the bucket.
    /// Common practice, no source.</summary>
    public static string UsualMeasure(string material) =>
        MaterialTable.TryFind(material, out var known) && known.Role is MaterialRole.Brown or MaterialRole.Green
            ? "wheelbarrow"
            : "bucket";

    /// <summary>The question of a step and the materials it offers.</summary>
    public static (MessageSpec Question, IReadOnlyList<string> Materials) Menu(int step) => Menus[step];

    /// <summary>All materials of a role, the commonest first. A text offers the first few, by the same
    /// numbers.</summary>
    public static IReadOnlyList<string> MaterialsOf(MaterialRole role)
    {
        var commonest = ByRole.Single(menu => menu.Role == role).Commonest;
        var all = MaterialTable.All.Where(material => material.Role == role).Select(material => material.Key);
        return [.. commonest, .. all.Except(commonest)];
    }

    /// <summary>The question for a role and the materials it offers.</summary>
    public static (MessageSpec Question, IReadOnlyList<string> Materials) Menu(MaterialRole role, bool onScreen)
    {
        var materials = MaterialsOf(role);
        return (ByRole.Single(menu => menu.Role == role).Question,
            onScreen ? materials : [.. materials.Take(MostInText)]);
    }

    /// <summary>The materials that a menu question offers in a text; of several menus the longest.</summary>
    public static IReadOnlyList<string> MenuOf(MessageSpec question) => Menus
        .Concat(ByRole.Select(menu => (menu.Question, Materials: menu.Commonest)))
        .Where(menu => menu.Question == question).MaxBy(menu => menu.Materials.Length).Materials;
}
