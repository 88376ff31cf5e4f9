namespace HeapText.Dialog.Replies;

/// <summary>The materials of a text.</summary>
/// <param name="Materials">In order of appearance.</param>
/// <param name="Refused">Keys of materials that never go in, in order of appearance.</param>
/// <param name="Unsettled">Things that are no one material, in order of appearance.</param>
/// <param name="IsUnclear">True when an amount cannot be meant or a listed thing is not known.</param>
internal sealed record Stock(
    IReadOnlyList<ReadMaterial> Materials, IReadOnlyList<string> Refused, IReadOnlyList<ReadMaterial> Unsettled,
    bool IsUnclear)
{
    public static Stock Nothing { get; } = new([], [], [], false);

    public bool IsEmpty => Materials.Count == 0 && Refused.Count == 0
        && Unsettled.All(thing => thing.Choices.Count == 0);
}
