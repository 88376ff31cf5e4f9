namespace HeapText.Dialog.Replies;

/// <summary>The number and measure of a text that holds nothing else, as an answer to a question does.</summary>
internal sealed record Bare(decimal? Number, string? Measure, bool IsUnclear)
{
    private static readonly Bare Nothing = new(null, null, false);

    public static Bare Of(IReadOnlyList<Tag> tags, IReadOnlyList<Part> parts)
    {
        if (tags.Any(SaysOther))
            return Nothing;
        var amounts = parts.Where(part => part.Kind == PartKind.Amount).ToList();
        var measures = parts.Where(part => part.Kind == PartKind.Measure).ToList();
        var isOther = parts.Any(part => part.Kind is PartKind.Other or PartKind.Days or PartKind.Counted
            or PartKind.Asking or PartKind.Absent or PartKind.Lacking);
        if (isOther || amounts.Count > 1 || measures.Count > 1 || amounts.Count + measures.Count == 0)
            return Nothing;
        var measure = measures.Count == 1 ? measures[0].Key : null;
        if (measure is null && amounts is [{ IsWord: true, Value: 1 }] && IsOneOrA(tags))
            return Nothing;
        if (amounts.Count == 0)
            return new Bare(null, measure, false);
        // Nought alone chooses an item of a menu; it is wrong only as an amount.
        var isBad = amounts[0].IsBad && !(amounts[0].Value == 0 && measure is null);
        return new Bare(isBad ? null : amounts[0].Value, measure, isBad);
    }

    /// <summary>True for a word that is no part of an amount, save one for "and" such as the "n" of
    /// "4 n half".</summary>
    private static bool SaysOther(Tag tag) => tag.IsUnknown || (!tag.Is(Particle.And)
        && tag.Meanings.Any(meaning => meaning.Kind is not (MeaningKind.Plain or MeaningKind.Particle
            or MeaningKind.Number or MeaningKind.Fraction or MeaningKind.Measure)));

    /// <summary>True where "one" may be "a", as "um" is: beside other words it need not answer a question.</summary>
    private static bool IsOneOrA(IReadOnlyList<Tag> tags) =>
        tags.Any(tag => tag.Is(Particle.One) && tag.First(MeaningKind.Measure) is null)
        && tags.Count(tag => !tag.IsBreak) > 1;
}
