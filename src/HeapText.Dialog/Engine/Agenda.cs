using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>What is due for a farmer, and when. Always worked out anew from the record, never kept.</summary>
internal static class Agenda
{
    /// <summary>Reminders of one thing before it is given up.</summary>
    public const int MostPrompts = 4;

    /// <summary>Days from each reminder to the next.</summary>
    private static readonly int[] DaysToNextPrompt = [1, 2, 3, 3];

    /// <summary>Questions that may stay open, whether a planned heap stands yet and how seeds grew, and the days
    /// between them.</summary>
    private const int MostSoftPrompts = 2;
    private const int DaysToNextSoftPrompt = 4;

    /// <summary>How long a question about another heap is given before the next heap's turn comes.</summary>
    private static readonly Duration QuestionRests = Duration.FromHours(3);

    /// <summary>The day on which a heap's farmer is next to be reminded; null when nothing is to come.</summary>
    public static LocalDate? PromptDay(HeapRecord heap)
    {
        var planned = PlannedDay(heap);
        return heap.IsTended && heap.CheckOn is { } check && !(planned <= check) ? check : planned;
    }

    /// <summary>True when a check without a turning is what comes first.</summary>
    public static bool IsCheckFirst(HeapRecord heap) => PromptDay(heap) is { } day && day != PlannedDay(heap);

    private static LocalDate? PlannedDay(HeapRecord heap)
    {
        if (heap.Due is not { } due) return null;
        if (heap.PromptedOn is not { } last) return due;
        if (heap.Step is HeapStep.Planned or HeapStep.Sprouting)
            return heap.Prompts < MostSoftPrompts ? last.PlusDays(DaysToNextSoftPrompt) : null;
        return last.PlusDays(DaysToNextPrompt[Math.Min(heap.Prompts, MostPrompts) - 1]);
    }

    /// <summary>The heap to speak of now: the one longest due; null when none is.</summary>
    public static HeapRecord? DueHeap(Farmer farmer, Instant now) => farmer.Heaps
        .Where(heap => PromptDay(heap) is { } day && FarmerClock.ReminderTime(farmer, day) <= now)
        .MinBy(heap => (PromptDay(heap), heap.Number));

    /// <summary>True when it is time to ask again about stock that was begun.</summary>
    public static bool DraftIsDue(Farmer farmer, Instant now) =>
        farmer.Draft?.NudgeOn is { } day && FarmerClock.ReminderTime(farmer, day) <= now;

    /// <summary>When to wake for this farmer; null when nothing is to come. Never outside the allowed hours.</summary>
    public static Instant? NextDue(Farmer farmer, Instant now)
    {
        if (farmer.Stopped || farmer.Group is null) return null;
        var days = farmer.Heaps.Select(PromptDay).Append(farmer.Draft?.NudgeOn).OfType<LocalDate>().ToList();
        if (days.Count == 0) return null;
        var at = FarmerClock.ReminderTime(farmer, days.Min());
        if (at > now) return at;
        var questionOpen = farmer.Stage != Stage.Tending && farmer.AskedAt is { } asked && asked + QuestionRests > now;
        return FarmerClock.Allowed(farmer, questionOpen ? farmer.AskedAt!.Value + QuestionRests : now);
    }
}
