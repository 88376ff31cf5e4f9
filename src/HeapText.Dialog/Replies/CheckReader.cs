using HeapText.Agronomy.Heap;

namespace HeapText.Dialog.Replies;

/// <summary>Reads what was felt, smelt, squeezed and seen.</summary>
internal static class CheckReader
{
    public static ReadCheck Read(IReadOnlyList<Tag> tags)
    {
        var check = new ReadCheck();
        var (isNow, isOnlyNot) = (false, false);
        for (var i = 0; i < tags.Count; i++)
        {
            isNow |= tags[i].Is(Particle.Now) || (i + 1 < tags.Count && tags[i + 1].Is(Particle.Now));
            if (!tags[i].Meanings.Any(meaning => meaning.IsCheck) || PartReader.IsThing(tags, i)
                || (IsOfMaterials(tags[i]) && IsAdjective(tags, i)) || (i > 0 && tags[i - 1].Is(Particle.Not))
                || IsDeniedAfter(tags, i) || IsCry(tags, i))
                continue;
            foreach (var meaning in tags[i].Meanings)
                check = With(check, meaning, (isNow && !IsAddedNot(tags, i)) || isOnlyNot || IsCloser(tags, i));
            isOnlyNot = tags[i].StartsWithNot;
        }

        return check;
    }

    /// <summary>True for words of a material too; of those for heat, such as "fresco", only the plain ones.</summary>
    private static bool IsOfMaterials(Tag tag) => tag.First(MeaningKind.Pests) is null
        && (tag.First(MeaningKind.Heat) is null || tag.First(MeaningKind.Plain) is not null);

    /// <summary>In "3 buckets wet cow dung" nothing is said about the heap.</summary>
    private static bool IsAdjective(IReadOnlyList<Tag> tags, int at) =>
        (Belongs(tags, at - 1) || Belongs(tags, at + 1)) && PartReader.InClause(tags, at, IsQuantity);

    /// <summary>"Hot no, cold no, warm": denied by a word that ends the clause.</summary>
    private static bool IsDeniedAfter(IReadOnlyList<Tag> tags, int at) => at + 1 < tags.Count
        && tags[at].First(MeaningKind.Heat) is not null && tags[at + 1].Meanings.Any(meaning => meaning.Is(Intent.No))
        && (at + 2 == tags.Count || tags[at + 2].IsBreak);

    /// <summary>"Stinks like a toilet": what it smells like tells more than how bad.</summary>
    private static bool IsCloser(IReadOnlyList<Tag> tags, int at) => at > 0
        && tags[at].First(MeaningKind.Smell) is not null && tags[at - 1].First(MeaningKind.Smell) is not null
        && tags[at].Words > tags[at - 1].Words;

    /// <summary>"Just warm not hot": says no more than what stands before it.</summary>
    private static bool IsAddedNot(IReadOnlyList<Tag> tags, int at) =>
        at > 0 && tags[at].StartsWithNot && tags[at - 1].First(MeaningKind.Heat) is not null;

    /// <summary>"Moto!! lundo linaungua": a cry of fire, where the word is one for hot as well.</summary>
    private static bool IsCry(IReadOnlyList<Tag> tags, int at) => tags[at].First(MeaningKind.Heat) is not null
        && (at == 0 || tags[at - 1].IsBreak) && at + 1 < tags.Count && tags[at + 1].IsBreak
        && tags.Any(tag => tag.First(MeaningKind.Urgent) is not null);

    private static bool Belongs(IReadOnlyList<Tag> tags, int at) => at >= 0 && at < tags.Count
        && (IsQuantity(tags[at]) || tags[at].Meanings.Any(meaning => meaning.IsThing));

    private static bool IsQuantity(Tag tag) => tag.Token.Kind == TokenKind.Number
        || tag.First(MeaningKind.Measure) is not null || (!tag.Is(Particle.One)
            && tag.Meanings.Any(m => m.Kind is MeaningKind.Number or MeaningKind.Fraction));

    /// <summary>The first report holds, or the later where "now" stands before it, nothing was seen, or a heap that has
    /// cooled is cold.</summary>
    private static ReadCheck With(ReadCheck check, Meaning meaning, bool isNow) => meaning.Kind switch
    {
        MeaningKind.Heat => check with
        {
            Heat = Later(check.Heat, Value<Heat>(meaning),
                isNow || (check.Heat == Heat.Cool && Value<Heat>(meaning) == Heat.Cold), null),
        },
        MeaningKind.Smell => check with { Smell = Later(check.Smell, Value<Smell>(meaning), isNow, Smell.None) },
        MeaningKind.Moisture => check with { Moisture = Later(check.Moisture, Value<Moisture>(meaning), isNow, null) },
        MeaningKind.Pests => check with { Pests = Later(check.Pests, Value<Pests>(meaning), isNow, Pests.None) },
        _ => check,
    };

    private static T Later<T>(T? first, T then, bool isNow, T? none) where T : struct, Enum =>
        first is { } held && !isNow && !held.Equals(none) ? held : then;

    private static T Value<T>(Meaning meaning) where T : struct, Enum =>
        Canonical.TryValue<T>(meaning.Key, out var value) ? value : default;
}
