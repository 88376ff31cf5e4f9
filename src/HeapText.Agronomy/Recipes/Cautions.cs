using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Recipes;

/// <summary>The one list of caution keys; their words live with the dialogs.</summary>
public static class Cautions
{
    /// <summary>Fence or cover a pit, dig only where no water seeps in.</summary>
    public const string Pit = "pit";

    /// <summary>Wet dusty stuff first and cover mouth and nose.</summary>
    public const string Dust = "dust";

    /// <summary>Ash only once it is cold: fire.</summary>
    public const string AshCold = "ash-cold";

    /// <summary>Wash hands after manure; none near food or open wounds.</summary>
    public const string ManureHygiene = "manure-hygiene";

    /// <summary>Half loads, or two people to a load.</summary>
    public const string Lifting = "lifting";

    /// <summary>Keep the heap away from and downhill of wells and streams.</summary>
    public const string Wells = "wells";

    /// <summary>Look before putting a hand into old stacks.</summary>
    public const string Snakes = "snakes";

    /// <summary>Before the key of a material that never goes in.</summary>
    public const string RefusedPrefix = "refused:";

    private static readonly string[] Dusty = ["rock-dust", "charcoal", "lime", "wood-ash", "rock-phosphate", "bone-meal"];

    /// <summary>Whether a material raises dust that should not be breathed.</summary>
    public static bool IsDusty(string material) => Dusty.Contains(material);

    /// <summary>Cautions for building with some materials, refused ones named; in a fixed order.</summary>
    internal static IReadOnlyList<string> For(
        IReadOnlyCollection<Material> used, IEnumerable<string> refused, HeapForm form)
    {
        List<string> keys = [.. refused.Select(key => RefusedPrefix + key)];
        if (used.Count == 0)
        {
            return keys;
        }

        if (form == HeapForm.Pit)
        {
            keys.Add(Pit);
        }

        if (used.Any(material => IsDusty(material.Key)))
        {
            keys.Add(Dust);
        }

        if (used.Any(material => material.Key == "wood-ash"))
        {
            keys.Add(AshCold);
        }

        if (used.Any(material => material.Role == MaterialRole.Manure))
        {
            keys.Add(ManureHygiene);
        }

        keys.AddRange([Lifting, Wells, Snakes]);
        return keys;
    }
}
