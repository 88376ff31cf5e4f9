using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>One turn of the conversation under way: the record as it changes, and what is said so far.</summary>
internal sealed class Talk
{
    private static readonly Duration ReplyKeeps = Duration.FromHours(24);

    private readonly Phrasebook _book;
    private readonly IReadOnlyDictionary<int, Group> _groups;
    private readonly Priority _priority;
    private readonly List<Outbound> _says = [];

    public Talk(
        Farmer farmer, Instant now, Priority priority, Phrasebook book, IReadOnlyDictionary<int, Group> groups,
        Office office)
    {
        (Farmer, Now, _priority, _book, _groups, Office) = (farmer, now, priority, book, groups, office);
    }

    public Office Office { get; }

    public Farmer Farmer { get; set; }

    public Instant Now { get; }

    public IReadOnlyList<Outbound> Says => _says;

    /// <summary>The date where the farmer is.</summary>
    public LocalDate Today => Now.InZone(FarmerClock.Zone(Farmer)).Date;

    /// <summary>The group joined, or the one asked about.</summary>
    public Group? Group => _groups.GetValueOrDefault(Farmer.Group ?? Farmer.InvitedTo ?? 0);

    public Value Officer => new Value.Name(Group?.Officer ?? "");

    public StockDraft Draft => Farmer.Draft ?? new StockDraft();

    /// <summary>The heap the open question is about; null when it is gone.</summary>
    public HeapRecord? TalkedOf => Farmer.Heaps.FirstOrDefault(heap => heap.Number == Farmer.TalkOf);

    public Group? GroupOf(int code) => _groups.GetValueOrDefault(code);

    public bool Speaks(string language) => _book.Speaks(language);

    public void Say(MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling) =>
        Add(_book.Say(Farmer.Language, message, filling));

    /// <summary>Says something of a heap, naming the heap when the phone has several.</summary>
    public void SayOf(HeapRecord heap, MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling) =>
        Add(PrefixOf(heap) + _book.Say(Farmer.Language, message, filling));

    public bool Fits(HeapRecord heap, MessageSpec message, params ReadOnlySpan<(string Slot, Value Value)> filling) =>
        _book.Fits(Farmer.Language, message, PrefixOf(heap), filling);

    /// <summary>The answer to a number that has not joined: how to, in every language, in one message.</summary>
    public void SayInEveryLanguage(MessageSpec message) =>
        Add(string.Join("\n", _book.Languages.Select(language => _book.Say(language, message))));

    /// <summary>Opens a question, or closes the open one. What is still to be brought stays open behind it.</summary>
    public void Ask(Cue cue, HeapRecord? about = null)
    {
        if (cue == Cue.Settled && Draft.Missing.Count > 0) cue = Cue.StockTooSmall;
        else if (cue == Cue.Settled) Farmer = Farmer with { Draft = null };
        Farmer = Farmer with
        {
            Stage = Script.Next(Farmer.Stage, cue),
            TalkOf = about?.Number ?? Farmer.TalkOf,
            AskedAt = Now,
        };
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

    private string PrefixOf(HeapRecord heap) =>
        Farmer.Heaps.Any(h => h.Number != heap.Number && h.Step is not (HeapStep.Ready or HeapStep.GivenUp))
            ? _book.HeapPrefix(Farmer.Language, heap.Number)
            : "";

    private void Add(string text)
    {
        Farmer = Farmer with { MessagesMade = Farmer.MessagesMade + 1 };
        var id = string.Create(CultureInfo.InvariantCulture, $"{Farmer.Subject}-{Farmer.MessagesMade}");
        var expires = _priority == Priority.Reply ? Now + ReplyKeeps : FarmerClock.EndOfAllowed(Farmer, Now);
        _says.Add(new Outbound(id, Farmer.Line, text, _priority, Now, expires));
    }
}
