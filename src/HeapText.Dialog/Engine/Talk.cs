using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>One turn of the conversation under way: the record as it changes, and what is said so far.</summary>
internal sealed class Talk
{
    private const int MostSegments = 2;
    private static readonly Duration ReplyKeeps = Duration.FromHours(24);

    private readonly Phrasebook _book;
    private readonly IReadOnlyDictionary<int, Group> _groups;
    private readonly Priority _priority;
    private readonly List<Outbound> _says = [];
    private readonly HashSet<MessageSpec> _said = [];
    private string _lead = "";

    public Talk(
        Farmer farmer, Instant now, Priority priority, Phrasebook book, IReadOnlyDictionary<int, Group> groups,
        Office office)
    {
        (Farmer, Now, _priority, _book, _groups, Office) = (farmer, now, priority, book, groups, office);
    }

    public Office Office { get; }

    /// <summary>True when the farmer reads on a dialled screen, where long lists are paged and an answer costs no
    /// text.</summary>
    public bool OnScreen { get; init; }

    public Farmer Farmer { get; set; }

    public Instant Now { get; }

    public IReadOnlyList<Outbound> Says => _says;

    /// <summary>True when this message was said in this turn.</summary>
    public bool HasSaid(MessageSpec message) => _said.Contains(message);

    /// <summary>The date where the farmer is.</summary>
    public LocalDate Today => Now.InZone(FarmerClock.Zone(Farmer)).Date;

    /// <summary>The group joined, or the one asked about.</summary>
    public Group? Group => _groups.GetValueOrDefault(Farmer.Group ?? Farmer.InvitedTo ?? 0);

    public Value Officer => new Value.Name(Group?.Officer ?? "");

    public StockDraft Draft => Farmer.Draft ?? new StockDraft();

    /// <summary>The heap the open question is about; null when it is gone.</summary>
    public HeapRecord? TalkedOf => Farmer.Heaps.FirstOrDefault(heap => heap.Number == Farmer.TalkOf);

    public Group? GroupOf(int code) => _groups.GetValueOrDefault(code);

    /// <summary>The name of a material in the farmer's language.</summary>
    public string NameOf(string material) => _book.File(Language).Materials[material];

    /// <summary>True when the farmer may be written to in this language: there are texts in it, and a native-speaking
    /// agronomist has read them, or the office allows them everywhere or as the language of the farmer's group. Who has
    /// no group yet may be of any.</summary>
    public bool Speaks(string language) => _book.Speaks(language)
        && (_book.File(language).Reviewed || Office.Languages is null || Office.Languages.Contains(language)
            || (Group is { } group ? group.Language == language
                : _groups.Values.Any(one => one.Language == language)));

    /// <summary>The language the farmer is written to in: the one on record, else that of the group, else the first
    /// that may be spoken.</summary>
    private string Language =>
        Speaks(Farmer.Language) ? Farmer.Language : Offered.FirstOrDefault() ?? Farmer.Language;

    /// <summary>The languages the farmer may be written to in, that of the group first.</summary>
    private IEnumerable<string> Offered => new[] { Group?.Language }.OfType<string>().Concat(LanguagesOfGroups)
        .Concat(_book.Languages).Distinct().Where(Speaks);

    /// <summary>Puts a sentence before what is said next, in the same message where that keeps to two parts.</summary>
    public void Lead(MessageSpec message) => _lead = _book.Say(Language, message);

    public void Say(MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling)
    {
        _said.Add(message);
        Add(_book.Say(Language, message, filling));
    }

    /// <summary>Says something of a heap, naming the heap when the phone has several.</summary>
    public void SayOf(HeapRecord heap, MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling)
    {
        _said.Add(message);
        Add(PrefixOf(heap) + _book.Say(Language, message, filling));
    }

    public bool Fits(HeapRecord heap, MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling) =>
        _book.Fits(Language, message, PrefixOf(heap), filling);

    /// <summary>How the other languages offer themselves, those of groups first.</summary>
    public Value LanguageHints => new Value.LanguageHints(
    [
        .. LanguagesOfGroups.Concat(_book.Languages.Where(Speaks)).Distinct().Where(language => language != Language),
    ]);

    /// <summary>How the languages offer themselves to who asked for another: the others, or else the only
    /// one.</summary>
    public Value LanguageChoices => LanguageHints is Value.LanguageHints { Languages.Count: > 0 } hints
        ? hints
        : new Value.LanguageHints([Language]);

    /// <summary>Languages of the groups, that of most groups first.</summary>
    public IEnumerable<string> LanguagesOfGroups => _groups.Values.Select(group => group.Language).Where(Speaks)
        .GroupBy(language => language).OrderByDescending(same => same.Count())
        .ThenBy(same => same.Key, StringComparer.Ordinal).Select(same => same.Key);

    /// <summary>Says something to a number that has not joined, in one message: in the language it wrote in where
    /// that can be told, else in the languages of the groups, as many as fit.</summary>
    public void SayToStranger(MessageSpec message, string? writtenIn)
    {
        var languages = writtenIn is not null && Speaks(writtenIn) ? [writtenIn] : LanguagesOfGroups.ToList();
        if (languages.Count == 0) languages = [Language];
        var text = _book.Say(languages[0], message);
        foreach (var language in languages.Skip(1))
        {
            var longer = $"{text}\n{_book.Say(language, message)}";
            if (Fit.Measure(longer).Segments <= MostSegments) text = longer;
        }
        Add(text);
    }

    /// <summary>Opens a question, or closes the open one. What is still to be brought or picked stays open behind
    /// it.</summary>
    public void Ask(Cue cue, HeapRecord? about = null)
    {
        if (cue == Cue.Settled && Draft is { ByRole: true, Items.Count: > 0 }) cue = Cue.MenuWanted;
        else if (cue == Cue.Settled && Draft.Missing.Count > 0) cue = Cue.StockTooSmall;
        else if (cue == Cue.Settled) Farmer = Farmer with { Draft = null };
        var stage = Script.Next(Farmer.Stage, cue);
        Farmer = Farmer with
        {
            Side = IsSide(stage) ? Farmer.Side : null,
            Stage = stage,
            TalkOf = about?.Number ?? Farmer.TalkOf,
            AskedAt = Now,
        };
    }

    /// <summary>Begins a question beside the heap; the one that is open is kept to go back to.</summary>
    public void OpenSide() => Farmer = Farmer with
    {
        Side = Farmer.Side is { } open
            ? new SideTalk { Before = open.Before, TalkOf = open.TalkOf }
            : new SideTalk { Before = Farmer.Stage, TalkOf = Farmer.TalkOf },
    };

    /// <summary>Goes back to the question that was open before, and asks it again.</summary>
    public void CloseSide()
    {
        if (Farmer.Side is { } side) GoBackTo(side);
    }

    /// <summary>Goes back to the question that was open before some side talk, and asks it again.</summary>
    public void GoBackTo(SideTalk side)
    {
        Ask(Script.CueTo(side.Before));
        Farmer = Farmer with { Side = null, TalkOf = side.TalkOf };
        if (OpenQuestion.IsOpen(this)) OpenQuestion.AskAgain(this);
    }

    /// <summary>Drops a question beside the heap; the one before is open again, without a word, for what the farmer
    /// has just texted.</summary>
    public void LeaveSide()
    {
        if (Farmer.Side is { } side) Farmer = Farmer with { Stage = side.Before, TalkOf = side.TalkOf, Side = null };
    }

    /// <summary>Replaces a heap's record, or adds a new one.</summary>
    public void Put(HeapRecord heap) => Farmer = Farmer with
    {
        Heaps = [.. Farmer.Heaps.Where(h => h.Number != heap.Number).Append(heap).OrderBy(h => h.Number)],
    };

    /// <summary>Puts the farmer on the officer's list, with this among the reasons.</summary>
    public void Worry(ConcernReason reason) => Farmer = Farmer with
    {
        Concern = (Farmer.Concern ?? new Concern { Reason = reason, Since = Now }).And(reason),
    };

    /// <summary>Takes a reason off the officer's list: it has settled itself.</summary>
    public void Unworry(ConcernReason reason) => Farmer = Farmer with { Concern = Farmer.Concern?.Without(reason) };

    private static bool IsSide(Stage stage) => stage is Stage.AskingCrop or Stage.AskingPlants or Stage.AskingLength
        or Stage.AskingWidth or Stage.AskingRain or Stage.AskingWater or Stage.AskingLabour or Stage.AskingHour
        or Stage.AskingRod;

    private string PrefixOf(HeapRecord heap) =>
        Farmer.Heaps.Any(h => h.Number != heap.Number && h.Step is not (HeapStep.Ready or HeapStep.GivenUp))
            ? _book.HeapPrefix(Language, heap.Number)
            : "";

    private void Add(string text)
    {
        var lead = _lead;
        _lead = "";
        if (lead.Length > 0 && Fit.Measure($"{lead} {text}").Segments <= MostSegments) text = $"{lead} {text}";
        else if (lead.Length > 0) Add(lead);
        Farmer = Farmer with { MessagesMade = Farmer.MessagesMade + 1 };
        var id = string.Create(CultureInfo.InvariantCulture, $"{Farmer.Subject}-{Farmer.MessagesMade}");
        var expires = _priority == Priority.Reply ? Now + ReplyKeeps : FarmerClock.EndOfAllowed(Farmer, Now);
        _says.Add(new Outbound(id, Farmer.Line, text, _priority, Now, expires));
    }
}
