using HeapText.Agronomy.Heap;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>A heap from "built" through its turnings.</summary>
internal sealed class Tending(Office office)
{
    /// <summary>A turning this many days or more before its day does not count as the planned one.</summary>
    private const int EarlyDays = 3;

    private const int LitresOfBucket = 20;

    /// <summary>The farmer says that the heap stands.</summary>
    public void Built(Talk talk, int daysAgo)
    {
        if (talk.Farmer.Heaps.FirstOrDefault(h => h.Step == HeapStep.Planned) is not { } heap)
        {
            if (talk.Farmer.Heaps.LastOrDefault(h => h.IsTended) is { } standing)
                talk.SayOf(standing, Catalogue.BuiltAlready);
            else talk.Say(Catalogue.NextNothing);
            return;
        }
        if (heap.Stock.All(had => talk.Draft.Items.Any(item => item.Material == had.Material)))
            talk.Farmer = talk.Farmer with { Draft = null };
        var method = MethodOf(heap);
        var on = talk.Today.PlusDays(-daysAgo);
        var first = LocalDate.Max(on.PlusDays(method.TurnDays[0]), talk.Today.PlusDays(1));
        heap = (heap with { BuiltOn = on, CheckOn = NextCheck(talk, method, on) }).To(HeapStep.Turning, first);
        talk.Put(heap);
        talk.SayOf(heap, Catalogue.Built,
            ("turns", new Value.Count("turns", method.Turns)), ("date", new Value.Date(first)));
        talk.Ask(Cue.Settled, heap);
        AskHourOrRod(talk);
    }

    /// <summary>Asks the hour for reminders and the kind of rod, each once in the life of a phone.</summary>
    public static void AskHourOrRod(Talk talk)
    {
        if (talk.Farmer.Hour is null) talk.Ask(Cue.HourWanted);
        else if (talk.Farmer.Rod is null) talk.Ask(Cue.RodWanted);
        else talk.Ask(Cue.Settled);
        AskAgain(talk);
    }

    /// <summary>Says the open question of hour or rod.</summary>
    public static void AskAgain(Talk talk)
    {
        if (talk.Farmer.Stage == Stage.AskingRod) talk.Say(Catalogue.AskRod);
        if (talk.Farmer.Stage == Stage.AskingHour)
            talk.Say(Catalogue.AskHour,
                ("choices", new Value.Choices([.. ReminderHours.All.Select(hour => new Value.Hour(hour))])));
    }

    /// <summary>Answers the open question of hour or rod; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading)
    {
        if (reading.BareNumber is not { } number || number % 1 != 0) return false;
        if (talk.Farmer.Stage == Stage.AskingHour && number >= 1 && number <= ReminderHours.All.Count)
        {
            var hour = ReminderHours.All[(int)number - 1];
            talk.Farmer = talk.Farmer with { Hour = hour };
            talk.Say(Catalogue.HourSet, ("hour", new Value.Hour(hour)));
        }
        else if (talk.Farmer.Stage == Stage.AskingRod && number is 1 or 2)
        {
            var rod = number == 1 ? Rod.Wood : Rod.Metal;
            talk.Farmer = talk.Farmer with { Rod = rod };
            talk.Say(rod == Rod.Wood ? Catalogue.RodWood : Catalogue.RodMetal);
        }
        else return false;
        if (talk.Farmer.Side is { Before: not Stage.Tending }) talk.CloseSide();
        else AskHourOrRod(talk);
        return true;
    }

    /// <summary>The farmer wants another hour, or has another rod; then the talk goes on where it was.</summary>
    public static void AskAnew(Talk talk, Cue question)
    {
        if (talk.Farmer.Stage is not (Stage.AskingHour or Stage.AskingRod)) talk.OpenSide();
        talk.Ask(question);
        AskAgain(talk);
    }

    /// <summary>The farmer says that a heap was turned.</summary>
    public void Turned(Talk talk, HeapRecord heap, int daysAgo)
    {
        var on = LocalDate.Max(talk.Today.PlusDays(-daysAgo), heap.BuiltOn!.Value);
        var method = MethodOf(heap);
        talk.Ask(Cue.Settled, heap);
        talk.Unworry(ConcernReason.Overdue);
        if (heap.Step == HeapStep.Turning && CountsAsPlanned(heap, on)) PlannedTurning(talk, heap, method, on);
        else if (heap.Step == HeapStep.Turning) SayNoted(talk, heap, on);
        else
        {
            var ask = LocalDate.Max(on.PlusDays(method.SettleDays), talk.Today.PlusDays(1));
            heap = (heap with { LastTurned = on }).To(HeapStep.Settling, ask);
            talk.Put(heap);
            talk.SayOf(heap, Catalogue.TurnedExtra, ("date", new Value.Date(heap.Due!.Value)));
        }
    }

    /// <summary>The farmer cannot turn today. Who answers is asked again the next day, and is not given up.</summary>
    public void Delayed(Talk talk, HeapRecord heap)
    {
        talk.Ask(Cue.Settled, heap);
        if (!Checking.IsTurningDue(heap, talk.Today))
        {
            NextStep.Say(talk, heap, MethodOf(heap));
            return;
        }
        heap = heap with { PromptedOn = talk.Today, Prompts = 1 };
        talk.Put(heap);
        talk.SayOf(heap, Catalogue.Delayed, ("date", new Value.Date(Agenda.PromptDay(heap)!.Value)));
    }

    /// <summary>Reminds of a turning: with the check questions on its day, with a plain question afterwards.</summary>
    public void Remind(Talk talk, HeapRecord heap)
    {
        var late = heap.Due!.Value < talk.Today;
        var first = heap.Prompts == 0;
        heap = heap with { PromptedOn = talk.Today, Prompts = heap.Prompts + 1 };
        talk.Put(heap);
        if (!first)
        {
            talk.Ask(Cue.TurnedWanted, heap);
            SayAskTurned(talk, heap);
            return;
        }
        var turn = ("turn", (Value)new Value.Ordinal(heap.TurnedOn.Count + 1));
        var turns = ("turns", (Value)new Value.Number(MethodOf(heap).Turns));
        if (heap.Step == HeapStep.ExtraTurning) talk.SayOf(heap, Catalogue.TurnOnceMore);
        else if (late) talk.SayOf(heap, Catalogue.TurnLate, ("date", new Value.Date(heap.Due.Value)), turn, turns);
        else talk.SayOf(heap, Catalogue.TurnToday, turn, turns);
        if (WaterBuckets(heap) is > 0 and var water)
            talk.SayOf(heap, Catalogue.BringWater, ("water", new Value.Buckets(water)));
        if (talk.Farmer.Rod is null) talk.Say(Catalogue.RodMetal);
        talk.Ask(Cue.HeatWanted, heap);
        talk.SayOf(heap, Catalogue.AskHeat);
    }

    /// <summary>Asks how the heap is, on a day without a turning. Asked once, and not again when it stays
    /// open.</summary>
    public void RemindOfCheck(Talk talk, HeapRecord heap)
    {
        heap = heap with { CheckOn = NextCheck(talk, MethodOf(heap), heap.BuiltOn!.Value) };
        talk.Put(heap);
        if (talk.Farmer.Rod is null) talk.Say(Catalogue.RodMetal);
        talk.Ask(Cue.HeatWanted, heap);
        talk.SayOf(heap, Catalogue.AskHeat);
    }

    public static void SayAskTurned(Talk talk, HeapRecord heap) =>
        talk.SayOf(heap, Catalogue.AskTurned, ("date", new Value.Date(heap.Due ?? talk.Today)));

    public HeapMethod MethodOf(HeapRecord heap) => office.MethodOf(heap.Method);

    /// <summary>Water to bring to a turning, in whole buckets; 0 when less than one is likely needed.</summary>
    private static int WaterBuckets(HeapRecord heap) =>
        heap.Step == HeapStep.Turning ? (heap.Outlook?.WaterLitres ?? 0) / LitresOfBucket : 0;

    /// <summary>The next day of a check that the method plans; null when none is to come.</summary>
    public static LocalDate? NextCheck(Talk talk, HeapMethod method, LocalDate builtOn) => method.CheckDays
        .Select(day => (LocalDate?)builtOn.PlusDays(day)).FirstOrDefault(day => day > talk.Today);

    private static bool CountsAsPlanned(HeapRecord heap, LocalDate on) =>
        !(heap.LastTurned >= on) && heap.Due is { } due && Period.DaysBetween(on, due) < EarlyDays;

    private static void PlannedTurning(Talk talk, HeapRecord heap, HeapMethod method, LocalDate on)
    {
        heap = heap with
        {
            TurnedOn = [.. heap.TurnedOn, on],
            LastTurned = on,
            CheckOn = heap.CheckOn > talk.Today ? heap.CheckOn : null,
        };
        heap = heap with { Outlook = Foretelling.Of(talk.Office, heap, talk.Farmer.Rod) };
        var day = method.NextTurnDay(heap.TurnedOn.Count, Period.DaysBetween(heap.BuiltOn!.Value, on));
        var next = heap.BuiltOn.Value.PlusDays(day ?? 0);
        heap = day is null
            ? heap.To(HeapStep.Settling, LocalDate.Max(on.PlusDays(method.SettleDays), talk.Today.PlusDays(1)))
            : heap.To(HeapStep.Turning, LocalDate.Max(next, talk.Today.PlusDays(on == talk.Today ? 1 : 0)));
        talk.Put(heap);
        var date = ("date", (Value)new Value.Date(heap.Due!.Value));
        if (day is null) talk.SayOf(heap, Catalogue.TurnedLast, date);
        else
            talk.SayOf(heap, Catalogue.Turned, ("turn", new Value.Ordinal(heap.TurnedOn.Count + 1)),
                ("turns", new Value.Number(method.Turns)), date);
    }

    private static void SayNoted(Talk talk, HeapRecord heap, LocalDate on)
    {
        heap = heap with { LastTurned = heap.LastTurned is { } last ? LocalDate.Max(last, on) : on };
        talk.Put(heap);
        talk.SayOf(heap, Catalogue.TurnedEarly, ("date", new Value.Date(heap.Due ?? talk.Today)));
    }
}
