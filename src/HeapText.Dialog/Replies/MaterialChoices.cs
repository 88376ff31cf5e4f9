namespace HeapText.Dialog.Replies;

/// <summary>The materials that a word may stand for, where it stands for nothing else.</summary>
internal static class MaterialChoices
{
    /// <summary>Keys of the materials among which to choose; empty when a meaning is no material, or when there are
    /// too many to ask about.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<Meaning> meanings)
    {
        if (meanings.Count == 0 || !meanings.All(meaning => meaning.IsThing)) return [];
        List<string> keys = [.. meanings.SelectMany(meaning => meaning.Choices ?? [meaning.Key]).Distinct()];
        return keys.Count <= Reading.MostChoices ? keys : [];
    }
}
