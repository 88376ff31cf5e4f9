using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Screens;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>The pure half: what a text or a due day changes, and what is said. No clock, no store, no
/// network.</summary>
public sealed class Conversation : IConversation
{
    private readonly Phrasebook _book;
    private readonly Reader _strangers;
    private readonly WordBook _words;
    private readonly ChoiceWords _choiceWords;
    private readonly IReadOnlyDictionary<int, Group> _groups;
    private readonly Office _office;
    private readonly Tending _tending;
    private readonly Finishing _finishing;
    private readonly Checking _checking;
    private readonly HeapChoice _heapChoice;
    private readonly Asides _asides;
    private readonly Reminding _reminding;
    private readonly Dialling _dialling;

    /// <summary>A conversation for some groups, as the office has set it.</summary>
    /// <param name="dialogs">Words to read and to say.</param>
    /// <param name="groups">The groups that can be joined, by code.</param>
    /// <param name="office">What the office has set.</param>
    /// <param name="words">The districts' own words; null for none.</param>
    public Conversation(
        DialogSet dialogs, IReadOnlyDictionary<int, Group> groups, Office office, WordBook? words = null)
    {
        (_book, _strangers, _groups) = (dialogs.Book, dialogs.Reader, groups);
        _words = words ?? new WordBook(dialogs.Reader);
        _office = office;
        _choiceWords = new ChoiceWords(dialogs.Answers);
        _tending = new Tending(office);
        _finishing = new Finishing(_tending);
        _checking = new Checking(_tending, _finishing);
        _heapChoice = new HeapChoice(_tending, _checking);
        _asides = new Asides(_tending);
        _reminding = new Reminding(_tending);
        _dialling = new Dialling(this, _book, dialogs.Answers);
    }

    /// <inheritdoc/>
    public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now)
    {
        farmer ??= new Farmer { Subject = subject, Line = line };
        var talk = new Talk(farmer with { Line = line }, now, Priority.Reply, _book, _groups, _office);
        Hear(talk, text);
        return Answered(talk);
    }

    /// <inheritdoc/>
    public Reaction Ring(Farmer? farmer, string subject, string line, Instant now)
    {
        farmer ??= new Farmer { Subject = subject, Line = line };
        var talk = new Talk(farmer with { Line = line }, now, Priority.Reply, _book, _groups, _office);
        if (talk.Farmer.Group is null) Joining.Ring(talk);
        else if (!talk.Farmer.Stopped) _asides.SayNext(talk);
        else if (Joining.MayAnswer(talk)) talk.Say(Catalogue.StoppedStill);
        return Answered(talk);
    }

    /// <inheritdoc/>
    public ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now)
    {
        farmer ??= new Farmer { Subject = subject, Line = step.Line };
        var talk = new Talk(Tidied(farmer, now), now, Priority.Reply, _book, _groups, _office) { OnScreen = true };
        var isNew = farmer is { Group: null, InvitedTo: null, LanguageChosen: false };
        if (isNew && talk.LanguagesOfGroups.FirstOrDefault() is { } usual)
            talk.Farmer = talk.Farmer with { Language = usual };
        return _dialling.Take(talk, step);
    }

    /// <summary>Takes a text in a turn under way.</summary>
    internal void Hear(Talk talk, string text)
    {
        // A basic phone has no point, and the question says so.
        if (talk.Farmer.Stage == Stage.AskingAmount) text = text.Replace('*', '.');
        Hear(talk, text, Read(talk, text), talk.Farmer.Group is null ? _strangers.LanguageOf(text) : null);
    }

    /// <summary>Reads a text in the farmer's language, with the district's own words.</summary>
    internal Reading Read(Talk talk, string text) =>
        _words.ReaderOf(DistrictOf(talk.Farmer)).Read(text, talk.Farmer.Language);

    /// <summary>Takes what was picked as if it had been texted.</summary>
    internal void Take(Talk talk, Reading reading) => Hear(talk, "", reading, null);

    /// <inheritdoc/>
    public Reaction Wake(Farmer farmer, Instant now)
    {
        var talk = new Talk(farmer, now, Priority.Reminder, _book, _groups, _office);
        if (!farmer.Stopped && farmer.Group is not null && FarmerClock.Allowed(farmer, now) == now)
        {
            if (Explaining.IsDone(farmer, WordsOf(farmer))) Explaining.Tell(talk, WordsOf(farmer));
            else if (Agenda.DueHeap(farmer, now) is { } heap) _reminding.Remind(talk, heap);
            else if (Agenda.DraftIsDue(farmer, now)) Stocktaking.Nudge(talk);
        }
        return Done(talk);
    }

    /// <inheritdoc/>
    public Instant? NextDue(Farmer farmer, Instant now)
    {
        var due = Agenda.NextDue(farmer, now);
        if (farmer.Stopped || farmer.Group is null || !Explaining.IsDone(farmer, WordsOf(farmer))) return due;
        var tells = FarmerClock.Allowed(farmer, now);
        return due < tells ? due : tells;
    }

    private Reaction Answered(Talk talk)
    {
        var (farmer, says) = AnswerLoop.Break(Tidied(talk.Farmer, talk.Now), talk.Says, talk.Now);
        return new Reaction(farmer, says, NextDue(farmer, talk.Now));
    }

    private Reaction Done(Talk talk) =>
        new(Tidied(talk.Farmer, talk.Now), talk.Says, NextDue(talk.Farmer, talk.Now));

    private string DistrictOf(Farmer farmer) => farmer.Group is { } code ? _office.DistrictOf(code) : "";

    private Func<string, OwnWord?> WordsOf(Farmer farmer)
    {
        var district = DistrictOf(farmer);
        return word => _words.Find(district, word);
    }

    /// <summary>Without a session on the screen that is long over.</summary>
    private static Farmer Tidied(Farmer farmer, Instant now) =>
        farmer.Screen is { } screen && now - screen.At > ScreenTalk.Kept ? farmer with { Screen = null } : farmer;

    private void Hear(Talk talk, string text, Reading reading, string? writtenIn)
    {
        if (talk.Farmer.Group is null) Joining.Hear(talk, reading, writtenIn);
        else if (reading.Intent == Intent.Stop) Stop(talk);
        else if (talk.Farmer.Stopped) HearStopped(talk, reading);
        else HearJoined(talk, text, reading);
    }

    private static void Stop(Talk talk)
    {
        if (talk.Farmer.Stopped) return;
        talk.Say(Catalogue.Stopped);
        talk.Farmer = talk.Farmer with { Stopped = true };
    }

    private void HearStopped(Talk talk, Reading reading)
    {
        if (reading.Intent == Intent.Start)
        {
            talk.Farmer = talk.Farmer with { Stopped = false, Misreadings = 0 };
            talk.Say(Catalogue.Started);
            _asides.SayNext(talk);
        }
        else if (Joining.MayAnswer(talk)) talk.Say(Catalogue.StoppedStill);
    }

    private void HearJoined(Talk talk, string text, Reading reading)
    {
        if (reading.Urgent && !IsReasonOfDelay(reading))
        {
            HearUrgent(talk, reading);
            return;
        }
        if (reading.Urgent) SayUrgent(talk);
        if (Understood(talk, text, reading)) talk.Farmer = talk.Farmer with { Misreadings = 0 };
        else Misread(talk);
        foreach (var other in reading.OfOtherHeaps.Where(other => HeapChoice.IsOfAnother(talk, other)))
            _heapChoice.Hear(talk, other);
    }

    /// <summary>"Cannot turn today, there is smoke": the delay is taken as well.</summary>
    private static bool IsReasonOfDelay(Reading reading) => reading.Check.IsEmpty
        && (reading.Intent == Intent.Delay || reading.Also.Contains(Intent.Delay));

    private bool Understood(Talk talk, string text, Reading reading)
    {
        if (reading.GroupCode is { } code) return ChangeGroup(talk, code);
        if (StaleQuestion.IsMetBy(talk, reading))
        {
            StaleQuestion.AskAnew(talk);
            return true;
        }
        if (WhichMaterial.Answer(talk, text, reading)) return true;
        if (_choiceWords.Read(talk.Farmer.Stage, text, talk.Farmer.Language) is { } chosen) reading = chosen;
        else if (_choiceWords.Talk(text, talk.Farmer.Language) is { } said) return HearTalk(talk, said);
        var isReport = talk.Farmer.Heaps.Any(h => h.IsTended) && talk.Farmer.Stage != Stage.Gathering
            && (!reading.Check.IsEmpty || reading.Also.Contains(Intent.Turned));
        if (reading.Intent == Intent.Stock && !isReport && !IsCount(talk, reading))
        {
            Stocktaking.Hear(talk, reading);
            return true;
        }
        if (!HeapChoice.IsOfAnother(talk, reading))
            return AnswersOpenQuestion(talk, reading) || TakesOther(talk, text, reading);
        _heapChoice.Hear(talk, reading);
        return true;
    }

    /// <summary>A text on stock of which no word is known: put to the trainer, and the question stays.</summary>
    private static bool AsksToExplain(Talk talk, Reading reading)
    {
        var isOfStock = Stocktaking.IsUnderWay(talk.Farmer.Stage) || talk.Farmer.Heaps.All(heap => !heap.IsTended);
        if (!isOfStock || !Explaining.Ask(talk, reading)) return false;
        if (OpenQuestion.IsOpen(talk)) OpenQuestion.AskAgain(talk);
        return true;
    }

    private bool TakesOther(Talk talk, string text, Reading reading)
    {
        if (talk.Farmer.Side is not null && reading.Intent is Intent.Check or Intent.Turned or Intent.Delay)
        {
            talk.LeaveSide();
            if (AnswersOpenQuestion(talk, reading)) return true;
        }
        return TakesIntent(talk, text, reading);
    }

    /// <summary>"30 banana plants" where it is asked how many is no stock.</summary>
    private static bool IsCount(Talk talk, Reading reading) => Counts.In(reading).Count > 0
        && talk.Farmer.Stage is Stage.AskingPlants or Stage.AskingLength or Stage.AskingWidth or Stage.AskingSprouts;

    private static bool HearTalk(Talk talk, string said)
    {
        switch (said)
        {
            case "hello" when OpenQuestion.IsOpen(talk): OpenQuestion.AskAgain(talk); break;
            case "hello": talk.Say(Catalogue.Help); break;
            default: Begin(talk, said); break;
        }
        return true;
    }

    /// <summary>Begins what is asked for by a word of its own, one of the answers to "talk"; nothing for a
    /// nod.</summary>
    internal static void Begin(Talk talk, string said)
    {
        switch (said)
        {
            case "hour": Tending.AskAnew(talk, Cue.HourWanted); break;
            case "crop": Using.Begin(talk, null); break;
            case "method": MethodAdvice.Begin(talk); break;
            case "rod": Tending.AskAnew(talk, Cue.RodWanted); break;
        }
    }

    private bool AnswersOpenQuestion(Talk talk, Reading reading) => talk.Farmer.Stage switch
    {
        Stage.AskingHour or Stage.AskingRod => Tending.Answer(talk, reading),
        Stage.AskingHeat or Stage.AskingSmell or Stage.AskingMoisture => _checking.Answer(talk, reading),
        Stage.AskingReheat or Stage.AskingReady or Stage.AskingSprouts => _finishing.Answer(talk, reading),
        Stage.AskingCrop or Stage.AskingPlants or Stage.AskingLength or Stage.AskingWidth =>
            Using.Answer(talk, reading),
        Stage.AskingRain or Stage.AskingWater or Stage.AskingLabour => MethodAdvice.Answer(talk, reading),
        Stage.AskingHeap => _heapChoice.Answer(talk, reading),
        Stage.Building or Stage.AskingBuilt => AnswersBuilt(talk, reading),
        Stage.AskingTurned or Stage.AwaitingTurn => AnswersTurned(talk, reading),
        _ => Stocktaking.Answer(talk, reading),
    };

    private bool AnswersBuilt(Talk talk, Reading reading)
    {
        var isAsked = talk.Farmer.Stage == Stage.AskingBuilt;
        if (isAsked && (reading.Intent == Intent.Yes || reading.BareNumber == 1)) _tending.Built(talk, reading.DaysAgo);
        else if ((reading.Intent == Intent.No || (isAsked && reading.BareNumber == 2)) && talk.TalkedOf is { } heap)
        {
            talk.Ask(Cue.RecipeSent, heap);
            talk.SayOf(heap, Catalogue.NotBuilt);
        }
        else return false;
        return true;
    }

    private bool AnswersTurned(Talk talk, Reading reading)
    {
        if (talk.TalkedOf is not { } heap) return false;
        var isAsked = talk.Farmer.Stage == Stage.AskingTurned;
        if (isAsked && (reading.Intent == Intent.Yes || reading.BareNumber == 1))
            _checking.Report(talk, heap, new HeapReport { Heaps = [], Turned = true, DaysAgo = reading.DaysAgo });
        else if (reading.Intent == Intent.No || (isAsked && reading.BareNumber == 2)) _tending.Delayed(talk, heap);
        else return false;
        return true;
    }

    private bool TakesIntent(Talk talk, string text, Reading reading)
    {
        switch (reading.Intent)
        {
            case Intent.Built: _tending.Built(talk, reading.DaysAgo); return true;
            case Intent.Check or Intent.Turned or Intent.Delay or Intent.Stock:
                _heapChoice.Hear(talk, reading);
                return true;
            case Intent.NewHeap: Stocktaking.BeginNewHeap(talk); return true;
            case Intent.Yes: return Agreed(talk);
            case Intent.Erase: Erase(talk); return true;
            case Intent.Unknown when talk.Farmer.Stage == Stage.AskingCrop
                && _choiceWords.CropIn(text, talk.Farmer.Language) is { } crop:
                Using.Begin(talk, crop);
                return true;
            case Intent.Use: Using.Begin(talk, _choiceWords.CropIn(text, talk.Farmer.Language)); return true;
            case Intent.Unknown when AsksToExplain(talk, reading): return true;
            default: return _asides.Answer(talk, reading);
        }
    }

    /// <summary>A yes to no question is a nod, and costs no answer; to another question it is asked again.</summary>
    private static bool Agreed(Talk talk)
    {
        if (talk.Farmer.Stage is not (Stage.Tending or Stage.Building or Stage.AwaitingTurn))
            OpenQuestion.AskAgain(talk);
        return true;
    }

    private static void Erase(Talk talk)
    {
        Asides.Tell(talk, ConcernReason.Erase, Catalogue.EraseTold);
        talk.Farmer = talk.Farmer with { Stopped = true };
    }

    private static bool ChangeGroup(Talk talk, int code)
    {
        if (talk.GroupOf(code) is not { } group)
        {
            talk.Say(Catalogue.NoSuchGroup, ("code", new Value.Number(code)));
            return true;
        }
        talk.Farmer = talk.Farmer with { Group = code, Zone = group.Zone };
        talk.Say(Catalogue.Welcome, ("group", new Value.Name(group.Name)));
        OpenQuestion.AskAgain(talk);
        return true;
    }

    /// <summary>A burn, a fire, a sick person goes first and to a person; no work is asked for in the same
    /// turn.</summary>
    private static void HearUrgent(Talk talk, Reading reading)
    {
        SayUrgent(talk);
        if (talk.Farmer.Heaps.Where(h => h.IsTended).ToList() is [var only] && !reading.Check.IsEmpty)
            Checking.Note(talk, only, reading.Check);
        talk.Farmer = talk.Farmer with { Misreadings = 0 };
    }

    private static void SayUrgent(Talk talk)
    {
        talk.Say(Catalogue.Urgent);
        Asides.Tell(talk, ConcernReason.Urgent, Catalogue.UrgentTold);
    }

    private static void Misread(Talk talk)
    {
        talk.Farmer = talk.Farmer with { Misreadings = talk.Farmer.Misreadings + 1 };
        if (talk.Farmer.Misreadings > 1)
        {
            talk.Farmer = talk.Farmer with { Misreadings = 0 };
            Asides.Tell(talk, ConcernReason.Misread, Catalogue.MisreadTold);
        }
        else if (Stocktaking.TakeUsual(talk)) { }
        else if (talk.Farmer.Stage == Stage.AskingStock)
        {
            talk.Farmer = talk.Farmer with { AskedAt = talk.Now };
            talk.Say(Catalogue.AskStockAgain);
        }
        else if (OpenQuestion.IsOpen(talk)) OpenQuestion.AskAgain(talk);
        else talk.Say(Catalogue.Misread);
    }
}
