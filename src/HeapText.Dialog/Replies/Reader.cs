using System.Collections.Frozen;
using HeapText.Dialog.Ports;

namespace HeapText.Dialog.Replies;

/// <summary>Reads farmers' texts. Pure and safe to share between threads; any string is accepted.</summary>
public sealed class Reader
{
    private readonly PhraseIndex _index;
    private readonly IReadOnlyList<string> _languages;
    private readonly FrozenDictionary<string, Tagger> _taggers, _taggersAlone;

    /// <summary>Makes a reader of all the languages together.</summary>
    public Reader(IReadOnlyList<Lexicon> lexicons)
    {
        ArgumentNullException.ThrowIfNull(lexicons);
        _index = new PhraseIndex(lexicons);
        _languages = [.. lexicons.Select(lexicon => lexicon.Language)];
        (_taggers, _taggersAlone) = (TaggersOf(_index, _languages), TaggersOf(_index, _languages, areAlone: true));
    }

    private Reader(PhraseIndex index, Reader shared)
    {
        (_index, _languages, _taggersAlone) = (index, shared._languages, shared._taggersAlone);
        _taggers = TaggersOf(index, _languages);
    }

    /// <summary>The same reader with a district's own words on top, each understood as if it stood in every words.yml.
    /// A word that must keep its meaning, see <see cref="MayMean"/>, is passed over.</summary>
    /// <param name="words">The own words of one district.</param>
    public Reader With(IEnumerable<OwnWord> words)
    {
        var own = words.Where(word => MayMean(word.Word)).DistinctBy(word => word.Word)
            .Select(word => (word.Word, MeaningOf(word)));
        return new Reader(new DistrictIndex(_index, own, _languages.Count), this);
    }

    /// <summary>True when a word may be made the name of a material: it means nothing yet, or a material. A number, a
    /// measure, a check or a wish such as STOP keeps its meaning everywhere.</summary>
    public bool MayMean(string word) => _index.Find(word) is var id && (id < 0
        || (!_index.IsLink(id) && (_index.Next(PhraseIndex.Root, id) is var node && (node < 0
            || _index.Ends(node).All(end => end.Meaning.IsThing || end.Meaning.Kind == MeaningKind.Plain
                || end.Meaning.Is(Particle.OtherCrop))))));

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
        var able = Languages.Where(one => Interpret(text, one, _taggersAlone).Intent != Intent.Unknown).Take(2);
        return able.ToList() is [var only] ? only : null;
    }

    private static Reading Interpret(string text, string language, FrozenDictionary<string, Tagger> taggers)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!taggers.TryGetValue(language, out var tagger))
            throw new ArgumentException($"There is no language '{language}'.", nameof(language));
        var tags = ListMarks.Parted(tagger.Read(text));
        if (HeapNumber.Split(tags) is not { Count: > 1 } pieces)
            return Interpret(tags);
        var readings = pieces.Select(Interpret).ToList();
        return readings.TrueForAll(IsReport) ? readings[0] with { OfOtherHeaps = readings[1..] } : Interpret(tags);
    }

    private static bool IsReport(Reading reading) =>
        reading.Heap is not null && reading.Intent is Intent.Check or Intent.Turned or Intent.Delay;

    private static FrozenDictionary<string, Tagger> TaggersOf(
        PhraseIndex index, IReadOnlyList<string> languages, bool areAlone = false) =>
        languages.Select((language, i) => (language, Tagger: new Tagger(index, i, areAlone)))
            .ToFrozenDictionary(pair => pair.language, pair => pair.Tagger, StringComparer.Ordinal);

    private static Meaning MeaningOf(OwnWord word) => word switch
    {
        { Material: null } => new Meaning(MeaningKind.Plain, "plain"),
        { IsRefused: true } => new Meaning(MeaningKind.Refused, word.Material),
        _ => new Meaning(MeaningKind.Material, word.Material),
    };

    private static Reading Interpret(List<Tag> tags)
    {
        var parts = PartReader.Read(tags);
        var joiner = new AmountJoiner(parts);
        joiner.Join();
        var intents = IntentReader.Read(tags);
        var check = CheckReader.Read(tags);
        var isUrgent = Alarm.IsIn(tags);
        // "Yes, but my hand is burnt" agrees to nothing.
        if (isUrgent) intents.RemoveAll(IsYesOrNo);
        // "Turned it, done": a yes after what was done says nothing more.
        if (intents is [Intent.Built or Intent.Turned, ..]) intents.Remove(Intent.Yes);
        var isAboutHeap = isUrgent || !check.IsEmpty
            || intents.Any(intent => !IsYesOrNo(intent) && intent != Intent.Start);
        var amounts = parts.Where(part => part.Kind == PartKind.Amount).ToList();
        var stock = StockReader.Read(parts, isAboutHeap);
        var lead = IntentReader.IsStop(tags) ? Intent.Stop
            : !stock.IsEmpty ? Intent.Stock : !check.IsEmpty ? Intent.Check : IntentReader.Lead(intents);
        var bare = Bare.Of(tags, parts);
        return new Reading
        {
            Intent = lead,
            Also = [.. intents.Where(intent => intent != lead
                && !(lead is Intent.Stock or Intent.Stop && IsYesOrNo(intent)))],
            Materials = stock.Materials,
            Unsettled = stock.Unsettled,
            Refused = stock.Refused,
            Check = check,
            Language = lead == Intent.Language ? LanguageOf(tags) : null,
            Unclear = stock.IsUnclear || bare.IsUnclear,
            BareNumber = bare.Number,
            Numbers = NumbersIn(tags),
            BareMeasure = bare.Measure,
            Heap = HeapNumber.Of(tags),
            DaysAgo = joiner.DaysAgo > 0 ? joiner.DaysAgo : DaysAgoOf(tags),
            GroupCode = lead == Intent.Start ? GroupCodeOf(NumbersIn(tags)) : null,
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

    /// <summary>The language named; of several the first that is not one the farmer says he does not want.</summary>
    private static string? LanguageOf(List<Tag> tags)
    {
        var named = tags.Select((tag, i) => (tag.First(MeaningKind.Language)?.Key, IsUnwanted: IsUnwanted(tags, i)))
            .Where(language => language.Key is not null).ToList();
        return named.Find(language => !language.IsUnwanted).Key ?? named.FirstOrDefault().Key;
    }

    /// <summary>In "I don't understand English, use Kiswahili", English.</summary>
    private static bool IsUnwanted(List<Tag> tags, int at) => at > 0 && (tags[at - 1].Is(Particle.Not)
        || tags[at - 1].Is(Particle.Absent) || tags[at - 1].Meanings.Any(meaning => meaning.Is(Intent.Help)));

    private static int DaysAgoOf(List<Tag> tags) =>
        (int)(tags.Select(tag => tag.First(MeaningKind.DaysAgo)).FirstOrDefault(day => day is not null)?.Value ?? 0);

    /// <summary>A word for "more" that is also one for "and" adds to an earlier list only before this one.</summary>
    private static bool IsInAddition(List<Tag> tags)
    {
        var first = tags.FindIndex(tag => tag.Meanings.Any(meaning => meaning.IsThing));
        return tags.Where((tag, i) => tag.Is(Particle.More) && (i < first || !tag.Is(Particle.And))).Any();
    }

    private static int? GroupCodeOf(IReadOnlyList<decimal> numbers) =>
        numbers is [> 0 and < 1_000_000 and var code] && decimal.IsInteger(code) ? (int)code : null;
}
