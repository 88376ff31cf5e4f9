namespace HeapText.Dialog.Replies;

/// <summary>Gives every tag its role in the list of materials.</summary>
internal static class PartReader
{
    private static readonly (Particle Particle, PartKind Kind)[] Roles =
    [
        (Particle.Absent, PartKind.Absent), (Particle.Lacking, PartKind.Lacking), (Particle.And, PartKind.And),
        (Particle.Or, PartKind.Or),
        (Particle.Not, PartKind.Not), (Particle.Have, PartKind.Have), (Particle.Each, PartKind.Each),
        (Particle.One, PartKind.One), (Particle.Some, PartKind.Some), (Particle.Between, PartKind.Between),
        (Particle.Correction, PartKind.Correction), (Particle.Said, PartKind.Said), (Particle.Ditto, PartKind.Ditto),
        (Particle.Minus, PartKind.Minus), (Particle.Days, PartKind.Days),
        (Particle.Ago, PartKind.Ago), (Particle.Counted, PartKind.Counted), (Particle.Asking, PartKind.Asking),
        (Particle.Water, PartKind.Water),
    ];

    public static List<Part> Read(IReadOnlyList<Tag> tags)
    {
        var parts = new List<Part>(tags.Count);
        var heap = HeapNumber.At(tags);
        for (var i = 0; i < tags.Count; i++)
            if (i != heap && Role(tags, i) is { } part)
                parts.Add(part);
        return parts;
    }

    /// <summary>True when a word that may be a material or an answer, such as "urine", is the material here.</summary>
    public static bool IsThing(IReadOnlyList<Tag> tags, int at)
    {
        if (!tags[at].Meanings.Any(meaning => meaning.IsThing))
            return false;
        if (IsSmeltOf(tags, at) || IsRod(tags, at))
            return false;
        if (!tags[at].Meanings.Any(meaning => meaning.IsCheck))
            return true;
        return tags.Any(tag => tag.Meanings.Any(m => m.IsThing) && !tag.Meanings.Any(m => m.IsCheck))
            || InClause(tags, at, tag => tag.Token.Kind == TokenKind.Number || tag.Is(Particle.Have)
                || tag.Is(Particle.Some) || tag.First(MeaningKind.Number) is not null
                || tag.First(MeaningKind.Measure) is not null || tag.First(MeaningKind.Fraction) is not null);
    }

    /// <summary>In "the iron was too hot to touch" no metal is thrown in: it is the rod.</summary>
    private static bool IsRod(IReadOnlyList<Tag> tags, int at) =>
        tags[at].First(MeaningKind.Refused) is { Key: "metal" }
        && InClause(tags, at, tag => tag.First(MeaningKind.Heat) is not null)
        && !InClause(tags, at, tag => tag.Is(Particle.Have) || tag.First(MeaningKind.Measure) is not null);

    /// <summary>In "it smells like bad fish" there is no fish.</summary>
    private static bool IsSmeltOf(IReadOnlyList<Tag> tags, int at)
    {
        for (var i = at - 1; i >= 0; i--)
        {
            if (tags[i].First(MeaningKind.Smell) is not null)
                return !tags[i].Meanings.Any(meaning => meaning.IsThing);
            if (tags[i].Meanings.Count == 0 || !tags[i].Meanings.All(meaning => meaning.Kind == MeaningKind.Plain
                    || meaning.Is(Particle.Link)))
                return false;
        }

        return false;
    }

    /// <summary>Whether any tag between the breaks around a place is as asked.</summary>
    public static bool InClause(IReadOnlyList<Tag> tags, int at, Func<Tag, bool> isAsked)
    {
        for (var i = at; i >= 0 && !tags[i].IsBreak; i--)
            if (isAsked(tags[i]))
                return true;
        for (var i = at + 1; i < tags.Count && !tags[i].IsBreak; i++)
            if (isAsked(tags[i]))
                return true;
        return false;
    }

    private static Part? Role(IReadOnlyList<Tag> tags, int at)
    {
        var tag = tags[at];
        if (tag.IsTorn)
            return new Part(PartKind.Thing) { Word = tag.Token.Text, Choices = tag.Choices };
        if (tag.IsUnknown)
            return new Part(PartKind.Unknown) { Word = tag.Token.Text, IsAlone = IsItem(tags, at) };
        if (tag.Meanings.Count == 0)
            return Literal(tag.Token) is { Kind: PartKind.Amount } amount
                ? amount with { IsOf = IsOf(tags, at) }
                : Literal(tag.Token);
        if (tag.First(MeaningKind.Measure) is { } measure)
            return new Part(PartKind.Measure, measure.Key, measure.Value) { IsSingle = tag.Is(Particle.One) };
        if (tag.Is(Particle.Vessel) && IsVessel(tags, at))
            return null;
        if (IsThing(tags, at))
            return OtherCrop(tags, at) is not { } crop ? Thing(tag)
                : crop.First(MeaningKind.Material) is null ? new Part(PartKind.Thing) { Word = crop.Token.Text } : null;
        if (tag.Is(Particle.Absent) && tag.Is(Particle.Not) && at + 1 < tags.Count && IsQuantity(tags[at + 1]))
            return new Part(PartKind.Not);
        if (tag.First(MeaningKind.Number) is { Value: 0 } && tag.Is(Particle.Absent) && IsThingNext(tags, at))
            return new Part(PartKind.Absent);
        if (tag.First(MeaningKind.Number) is { } number)
            return new Part(IsArticle(tags, tag) ? PartKind.One : PartKind.Amount, Value: number.Value)
            {
                IsWord = true,
                IsOf = IsOf(tags, at),
            };
        if (tag.First(MeaningKind.Fraction) is { } fraction)
            return new Part(PartKind.Fraction, Value: fraction.Value)
            {
                IsWord = true,
                IsJoined = tag.Is(Particle.And),
            };
        if (tag.Is(Particle.AskingFirst) && (at == 0 || tags[at - 1].IsBreak))
            return new Part(PartKind.Asking);
        if (tag.Is(Particle.Ditto) && at > 0 && tags[at - 1].Meanings.Any(meaning => meaning.IsThing))
            return new Part(PartKind.Ditto);
        foreach (var (particle, kind) in Roles)
            if (tag.Is(particle))
                return Near(kind, tag);
        if (!tag.Meanings.All(meaning => meaning.Kind is MeaningKind.Plain or MeaningKind.Particle))
            return Near(PartKind.Other, tag);
        return tag.Token.IsMended && tag.First(MeaningKind.Particle) is null ? Near(PartKind.Unknown, tag) : null;
    }

    private static bool IsQuantity(Tag tag) => tag.Token.Kind == TokenKind.Number
        || tag.Meanings.Any(meaning => meaning.Kind is MeaningKind.Number or MeaningKind.Measure);

    /// <summary>"2 tins of ash", "kopo 2 za majivu": they count the ash, and are not thrown in.</summary>
    private static bool IsVessel(IReadOnlyList<Tag> tags, int at)
    {
        var isBehind = at + 1 < tags.Count && IsNumber(tags[at + 1]);
        if (!isBehind && !(at > 0 && IsNumber(tags[at - 1])))
            return false;
        var next = isBehind ? at + 2 : at + 1;
        var isLinked = next < tags.Count && tags[next].Is(Particle.Link);
        return IsThingNext(tags, isLinked ? next : next - 1)
            || (at > 0 && tags[at - 1].Meanings.Any(meaning => meaning.IsThing));
    }

    private static bool IsNumber(Tag tag) => tag.Token.Kind == TokenKind.Number
        || tag.Meanings.Any(meaning => meaning.Kind is MeaningKind.Number or MeaningKind.Fraction);

    /// <summary>"Sunflower stalks", "tiges de manioc": not the stalks that are usually meant. The crop, null where
    /// there is none.</summary>
    private static Tag? OtherCrop(IReadOnlyList<Tag> tags, int at)
    {
        if (tags[at].Words > 1 || tags[at].First(MeaningKind.Refused) is not null || tags[at].Is(Particle.OtherCrop))
            return null;
        if (at > 0 && tags[at - 1].Is(Particle.OtherCrop))
            return tags[at - 1];
        var next = at + 1 < tags.Count && tags[at + 1].Is(Particle.Link) ? at + 2 : at + 1;
        return next < tags.Count && tags[next].Is(Particle.OtherCrop) ? tags[next] : null;
    }

    private static bool IsThingNext(IReadOnlyList<Tag> tags, int at) =>
        at + 1 < tags.Count && tags[at + 1].Meanings.Any(meaning => meaning.IsThing);

    private static bool IsOf(IReadOnlyList<Tag> tags, int at) =>
        at + 2 < tags.Count && tags[at + 1].Is(Particle.Link) && tags[at + 2].Meanings.Any(meaning => meaning.IsThing);

    private static Part Near(PartKind kind, Tag tag) =>
        new(kind) { Word = tag.Token.Text, IsNearPlain = tag.Token.IsMended };

    private static bool IsItem(IReadOnlyList<Tag> tags, int at)
    {
        return IsEnd(at - 1) && IsEnd(at + 1);

        bool IsEnd(int i) => i < 0 || i >= tags.Count || tags[i].IsBreak || tags[i].Is(Particle.And);
    }

    /// <summary>A word that is both "a" and "one" is the number for sure only where it is the whole text.</summary>
    private static bool IsArticle(IReadOnlyList<Tag> tags, Tag tag) =>
        tag.Is(Particle.One) && tags.Count(other => !other.IsBreak) > 1;

    private static Part Thing(Tag tag)
    {
        if (tag.First(MeaningKind.Refused) is { } refused)
            return new Part(PartKind.Thing, refused.Key) { IsRefused = true };
        return new Part(PartKind.Thing, tag.First(MeaningKind.Material)?.Key ?? "")
        {
            Word = tag.Token.Text,
            Choices = tag.First(MeaningKind.Ambiguous)?.Choices ?? [],
            IsElided = tag.IsElided,
        };
    }

    private static Part? Literal(Token token) => token.Kind switch
    {
        TokenKind.Number when token.IsFraction && !token.IsNegative => new Part(PartKind.Fraction, Value: token.Value),
        TokenKind.Number => new Part(PartKind.Amount, Value: token.Value)
        {
            IsBad = token.IsNegative,
            IsAfterColon = token.IsAfterColon,
        },
        TokenKind.WeakBreak => new Part(PartKind.WeakBreak),
        TokenKind.StrongBreak => new Part(PartKind.StrongBreak),
        TokenKind.Range => new Part(PartKind.Range),
        _ => null,
    };
}
