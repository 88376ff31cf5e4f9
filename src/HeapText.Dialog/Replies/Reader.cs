using System.Collections.Frozen;

namespace HeapText.Dialog.Replies;

/// <summary>Reads farmers' texts. Pure and safe to share between threads; any string is accepted.</summary>
public sealed class Reader
{
    private readonly PhraseIndex _index;
    private readonly FrozenDictionary<string, Tagger> _taggers, _taggersAlone;

    /// <summary>Makes a reader of all the languages together.</summary>
    public Reader(IReadOnlyList<Lexicon> lexicons)
    {
        ArgumentNullException.ThrowIfNull(lexicons);
        _index = new PhraseIndex(lexicons);
        (_taggers, _taggersAlone) = (Taggers(isAlone: false), Taggers(isAlone: true));

        FrozenDictionary<string, Tagger> Taggers(bool isAlone) => lexicons
            .Select((lexicon, i) => (lexicon.Language, Tagger: new Tagger(_index, i, isAlone)))
            .ToFrozenDictionary(pair => pair.Language, pair => pair.Tagger, StringComparer.Ordinal);
    }

    /// <summary>The languages that can be given to <see cref="Read"/>.</summary>
    public IReadOnlyCollection<string> Languages => _taggers.Keys;

    /// <summary>Reads a text. The given language goes first; words of the others are understood too.</summary>
    /// <param name="text">As it came in.</param>
    /// <param name="language">Two-letter code, one of <see cref="Languages"/>.</param>
    /// <exception cref="ArgumentException">There is no such language.</exception>
    public Reading Read(string text, string language) => Interpret(text, language, _taggers);

    /// <summary>Which language a short text is in: the only one in whose words alone it can be read. Null when several
    /// or none can read it.</summary>
    public string? LanguageOf(string text)
    {
        var able = Languages.Where(language => Interpret(text, language, _taggersAlone).Intent != Intent.Unknown).Take(2);
        return able.ToList() is [var only] ? only : null;
    }

    private static Reading Interpret(string text, string language, FrozenDictionary<string, Tagger> taggers)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!taggers.TryGetValue(language, out var tagger))
            throw new ArgumentException($"There is no language '{language}'.", nameof(language));
        return Interpret(tagger.Read(text));
    }

    private static Reading Interpret(List<Tag> tags)
    {
        var parts = PartReader.Read(tags);
        var joiner = new AmountJoiner(parts);
        joiner.Join();
        var intents = IntentReader.Read(tags);
        var check = CheckReader.Read(tags);
        var isUrgent = tags.Any(tag => tag.First(MeaningKind.Urgent) is not null);
        var isAboutHeap = isUrgent || !check.IsEmpty
            || intents.Any(intent => !IsYesOrNo(intent) && intent != Intent.Start);
        var amounts = parts.Where(part => part.Kind == PartKind.Amount).ToList();
        var stock = StockReader.Read(parts, isAboutHeap);
        var lead = !stock.IsEmpty ? Intent.Stock : !check.IsEmpty ? Intent.Check : IntentReader.Lead(intents);
        var bare = Bare.Of(tags, parts);
        return new Reading
        {
            Intent = lead,
            Also = [.. intents.Where(intent => intent != lead && !(lead is Intent.Stock or Intent.Stop && IsYesOrNo(intent)))],
            Materials = stock.Materials,
            Refused = stock.Refused,
            Check = check,
            Language = lead == Intent.Language ? LanguageOf(tags) : null,
            Unclear = stock.IsUnclear || bare.IsUnclear,
            BareNumber = bare.Number,
            Numbers = NumbersIn(tags),
            BareMeasure = bare.Measure,
            DaysAgo = joiner.DaysAgo > 0 ? joiner.DaysAgo : DaysAgoOf(tags),
            GroupCode = lead == Intent.Start ? GroupCodeOf(amounts) : null,
            InAddition = !stock.IsEmpty && IsInAddition(tags),
            Urgent = isUrgent,
        };
    }

    private static bool IsYesOrNo(Intent intent) => intent is Intent.Yes or Intent.No;

    /// <summary>All numbers, those that count plants or steps included.</summary>
    private static IReadOnlyList<decimal> NumbersIn(List<Tag> tags)
    {
        List<Part> parts = [.. PartReader.Read(tags).Where(part => part.Kind != PartKind.Counted)];
        if (!parts.Any(part => part.Kind is PartKind.Amount or PartKind.Fraction)) return [];
        if (parts.Any(part => part.IsBad || part.Kind == PartKind.Minus)) return [];
        new AmountJoiner(parts).Join();
        return [.. parts.Where(part => part.Kind == PartKind.Amount).Select(part => part.Value)];
    }

    private static string? LanguageOf(List<Tag> tags) =>
        tags.Select(tag => tag.First(MeaningKind.Language)).FirstOrDefault(meaning => meaning is not null)?.Key;

    private static int DaysAgoOf(List<Tag> tags) =>
        (int)(tags.Select(tag => tag.First(MeaningKind.DaysAgo)).FirstOrDefault(day => day is not null)?.Value ?? 0);

    /// <summary>A word for "more" that is also one for "and" adds to an earlier list only before this one.</summary>
    private static bool IsInAddition(List<Tag> tags)
    {
        var first = tags.FindIndex(tag => tag.Meanings.Any(meaning => meaning.IsThing));
        return tags.Where((tag, i) => tag.Is(Particle.More) && (i < first || !tag.Is(Particle.And))).Any();
    }

    private static int? GroupCodeOf(List<Part> amounts) =>
        amounts is [{ Value: > 0 and < 1_000_000 } code] && decimal.IsInteger(code.Value) ? (int)code.Value : null;
}
