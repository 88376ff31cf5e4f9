namespace HeapText.Dialog.Replies;

/// <summary>Reads what a text wants besides listing materials and reporting checks.</summary>
internal static class IntentReader
{
    /// <summary>Which of several intents in one text leads. Stock and check come before all of these.</summary>
    private static readonly Intent[] Order =
    [
        Intent.Stop, Intent.Erase, Intent.Person, Intent.Language, Intent.NewHeap, Intent.Start, Intent.Ready,
        Intent.Use, Intent.Amounts, Intent.Next, Intent.Delay, Intent.Built, Intent.Turned, Intent.Help, Intent.Yes,
        Intent.No,
    ];

    /// <summary>All intents in order of appearance, each once.</summary>
    public static List<Intent> Read(IReadOnlyList<Tag> tags)
    {
        var intents = new List<Intent>();
        for (var i = 0; i < tags.Count; i++)
        {
            foreach (var meaning in tags[i].Meanings)
            {
                if (IntentOf(meaning) is { } intent && Counts(tags, i, intent) && !intents.Contains(intent))
                    intents.Add(intent);
            }
        }

        // Who starts another heap starts, but has joined before.
        if (intents.Contains(Intent.NewHeap))
            intents.Remove(Intent.Start);
        return intents;
    }

    /// <summary>True when the text starts with stop, or a clause says it and nothing else, whatever the rest lists or
    /// reports.</summary>
    public static bool IsStop(IReadOnlyList<Tag> tags) => StartsWithStop(tags) || IsStopAlone(tags);

    private static bool StartsWithStop(IReadOnlyList<Tag> tags)
    {
        for (var i = 0; i < tags.Count; i++)
            if (!tags[i].IsBreak)
                return !tags[i].Token.IsMended && tags[i].Meanings.Any(meaning => meaning.Is(Intent.Stop))
                    && Counts(tags, i, Intent.Stop) && !PartReader.InClause(tags, i, tag => tag.Is(Particle.Asking));
        return false;
    }

    private static bool IsStopAlone(IReadOnlyList<Tag> tags)
    {
        for (var i = 0; i < tags.Count; i++)
            if (tags[i].Meanings.Any(meaning => meaning.Is(Intent.Stop)) && Counts(tags, i, Intent.Stop)
                && !PartReader.InClause(tags, i, IsMore))
                return true;
        return false;

        bool IsMore(Tag tag) => !IsYesOrNo(tag)
            && !tag.Meanings.Any(m => m.Kind == MeaningKind.Particle || m.Is(Intent.Stop));
    }

    /// <summary>The one that leads; unknown when there is none.</summary>
    public static Intent Lead(IReadOnlyList<Intent> intents) =>
        intents.OrderBy(i => Array.IndexOf(Order, i)).FirstOrDefault();

    private static Intent? IntentOf(Meaning meaning) => meaning.Kind switch
    {
        MeaningKind.Intent when Canonical.TryValue<Intent>(meaning.Key, out var intent) => intent,
        MeaningKind.Language => Intent.Language,
        _ => null,
    };

    /// <summary>A yes or no counts where a text or clause starts with it, and not where it denies a material.</summary>
    private static bool Counts(IReadOnlyList<Tag> tags, int at, Intent intent)
    {
        // A word that is also listed as plain, such as "heap", asks for something only when it is all there is.
        if (IsPlain(tags[at]) && !tags.Where((tag, i) => i != at)
            .All(tag => IsAside(tag) || (intent == Intent.Stop && IsYesOrNo(tag))))
            return false;
        if (intent is not (Intent.Yes or Intent.No))
            return at == 0 || !tags[at - 1].Is(Particle.Not) || intent != Intent.Language;
        for (var before = at - 1; before >= 0 && !tags[before].IsBreak; before--)
            if (!IsPlain(tags[before]))
                return false;
        var after = tags.Skip(at + 1).TakeWhile(tag => !tag.IsBreak).ToList();
        return !(tags[at].Is(Particle.Absent) && after.Any(tag => tag.Meanings.Any(meaning => meaning.IsThing)))
            && !(tags[at].Is(Particle.Not) && after.Any(IsReport)) && !(tags[at].Is(Particle.And) && after.Count > 0);
    }

    /// <summary>What a "not" takes back, as in "não 2 mas 5 sacos": a number, a thing or an answer.</summary>
    private static bool IsReport(Tag tag) => tag.Token.Kind == TokenKind.Number || tag.Meanings.Any(meaning =>
        meaning.IsThing || meaning.IsCheck || meaning.Kind is MeaningKind.Number or MeaningKind.Measure);

    private static bool IsAside(Tag tag) => tag.IsBreak || tag.Token.Kind == TokenKind.Number
        || tag.First(MeaningKind.Number) is not null;

    private static bool IsYesOrNo(Tag tag) => tag.Meanings.Any(m => m.Is(Intent.Yes) || m.Is(Intent.No));

    private static bool IsPlain(Tag tag) => tag.Meanings.Any(meaning => meaning.Kind == MeaningKind.Plain);
}
