using System.Reflection;

namespace HeapText.Agronomy.Heap;

/// <summary>The one list of causes a diagnosis may find; their words live with the dialogs.</summary>
public static class HeapCauses
{
    /// <summary>All is as it should be.</summary>
    public const string WorkingWell = "working-well";

    /// <summary>Too young to be warm.</summary>
    public const string JustBuilt = "just-built";

    /// <summary>It warms later than most, without a fault.</summary>
    public const string SlowStart = "slow-start";

    /// <summary>Its hot time is over, as it should be.</summary>
    public const string FinishedHeating = "finished-heating";

    /// <summary>Warm again after settling: it is not done.</summary>
    public const string Reheated = "reheated";

    /// <summary>Hotter than its life can bear.</summary>
    public const string TooHot = "too-hot";

    /// <summary>Not enough air.</summary>
    public const string NoAir = "no-air";

    /// <summary>Too much water.</summary>
    public const string TooWet = "too-wet";

    /// <summary>Water stands in the pit.</summary>
    public const string Waterlogged = "waterlogged";

    /// <summary>Rain got in.</summary>
    public const string RainedOn = "rained-on";

    /// <summary>Wet lumps in a heap that is not wet.</summary>
    public const string WetPockets = "wet-pockets";

    /// <summary>Too little water.</summary>
    public const string TooDry = "too-dry";

    /// <summary>Heat has dried the middle.</summary>
    public const string DryHotCore = "dry-hot-core";

    /// <summary>Dry spots where ants settle, in a heap that is not dry.</summary>
    public const string DryPockets = "dry-pockets";

    /// <summary>Hot and dry: such heaps can catch fire.</summary>
    public const string FireRisk = "fire-risk";

    /// <summary>Too much dung or green for the dry stuff.</summary>
    public const string TooMuchNitrogen = "too-much-nitrogen";

    /// <summary>Too little dung or green for the dry stuff.</summary>
    public const string TooLittleNitrogen = "too-little-nitrogen";

    /// <summary>Too small to keep its heat.</summary>
    public const string TooSmall = "too-small";

    /// <summary>Food lies open on it.</summary>
    public const string NotCovered = "not-covered";

    /// <summary>Food, meat or wet scraps in it.</summary>
    public const string FoodInside = "food-inside";

    /// <summary>Urgent: a person is badly hurt.</summary>
    public const string Hurt = "hurt";

    /// <summary>Urgent: a person is burnt.</summary>
    public const string Burn = "burn";

    /// <summary>Urgent: a person is ill.</summary>
    public const string SickPerson = "sick-person";

    /// <summary>Urgent: it burns inside.</summary>
    public const string Fire = "fire";

    /// <summary>Urgent: spray or poison may be in it.</summary>
    public const string Poison = "poison";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. typeof(HeapCauses).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!),
    ];
}
