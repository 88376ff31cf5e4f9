using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Heap;

/// <summary>Cautions for work on a heap, beside those of <see cref="Cautions"/>; their words live with the
/// dialogs.</summary>
public static class HeapCautions
{
    /// <summary>A hot dry heap can catch fire when opened: wet it first, water at hand, no smoking.</summary>
    public const string Fire = "fire";

    /// <summary>Steam burns: stand back and upwind when opening a hot heap.</summary>
    public const string Steam = "steam";

    /// <summary>A metal rod burns within seconds: touch fast, with the back of the hand, adults only.</summary>
    public const string RodBurn = "rod-burn";

    /// <summary>Gloves, and wash hands: rats carry sickness in their water.</summary>
    public const string Gloves = "gloves";

    /// <summary>The cautions that belong to a diagnosis, most pressing first.</summary>
    internal static IReadOnlyList<string> For(DiagnosisInput input, bool turns, bool feeds)
    {
        List<string> keys = [];
        var isHot = input.Heat == Heat.Hot;
        if (isHot && input.Moisture == Moisture.Dry) keys.Add(Fire);
        if (isHot && turns) keys.Add(Steam);
        if (isHot && input.Rod is null or RodKind.Metal) keys.Add(RodBurn);
        if (input.Pests == Pests.Rats) keys.Add(Gloves);
        if (input.Moisture == Moisture.Dry && turns) keys.Add(Cautions.Dust);
        if (feeds) keys.Add(Cautions.ManureHygiene);
        return keys;
    }
}
