using HeapText.Dialog.Engine;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Wording;

/// <summary>Fills each message of a language with the longest values it can meet and measures it.</summary>
internal sealed class WorstCase(Phrasebook book, TextFile file)
{
    public IEnumerable<DialogFault> Faults() => Catalogue.All.SelectMany(FaultsOf);

    private IEnumerable<DialogFault> FaultsOf(MessageSpec message)
    {
        var template = file.Messages[message.Key];
        var filling = message.Slots.Select(slot => (slot.Name, Longest(message, slot.Kind))).ToArray();
        var prefix = message.OfHeap ? book.HeapPrefix(file.Language, 9) : "";
        var text = prefix + book.Say(file.Language, message, filling);
        var fitting = Fit.Measure(text);
        if (fitting.Encoding == TextEncoding.Ucs2 && file.Alphabet == "GSM7")
            yield return At(template,
                $"'{message.Key}' has letters outside the GSM 7-bit alphabet: {OutsideGsm7(text)}");
        var most = message.SegmentsIn(file.Alphabet);
        if (fitting.Segments > most)
            yield return At(template,
                $"'{message.Key}' takes {fitting.Segments} segments ({fitting.Units} units), "
                + $"allowed {most}; longest: {text}");
    }

    private Value Longest(MessageSpec message, SlotKind kind) => kind switch
    {
        SlotKind.Number => new Value.Number(message.Slots.Any(s => s.Name == "code") ? 9999 : 20),
        SlotKind.Buckets => new Value.Buckets(20.5m),
        SlotKind.Metres => new Value.Metres(1.5),
        SlotKind.Date => new Value.Date(LongestDate()),
        SlotKind.Hour => new Value.Hour(file.Hours.MaxBy(h => Units(h.Value)).Key),
        SlotKind.Name => new Value.Name(new string('m', Phrasebook.LongestName)),
        SlotKind.Material => new Value.Material(LongestMaterial()),
        SlotKind.Materials => new Value.Materials([LongestMaterial()]) { LeftOut = 9 },
        SlotKind.Portions => new Value.Portions([new Portion(LongestMaterial(), 99.5m, LongestMeasure())]),
        SlotKind.Measure => new Value.Measure(LongestMeasure()),
        SlotKind.MaterialChoices => new Value.Choices(
            [.. StepByStep.MenuOf(message).Select(key => new Value.Material(key))]),
        SlotKind.MeasureChoices => new Value.Choices([.. StepByStep.Measures.Select(key => new Value.Measure(key))]),
        SlotKind.HourChoices => new Value.Choices([.. ReminderHours.All.Select(hour => new Value.Hour(hour))]),
        SlotKind.HeapChoices => new Value.Heaps([.. Enumerable.Repeat((99, LongestDate()), Farmer.MostHeaps)]),
        SlotKind.LanguageHints => new Value.LanguageHints(),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private LocalDate LongestDate()
    {
        var start = new LocalDate(2026, 1, 1);
        return Enumerable.Range(0, 365).Select(start.PlusDays).MaxBy(day =>
            Units(file.Weekdays[(int)day.DayOfWeek - 1]) + Units(file.Months[day.Month - 1]) + (day.Day > 9 ? 1 : 0));
    }

    private string LongestMaterial() => file.Materials.MaxBy(m => Units(m.Value)).Key;

    private string LongestMeasure() => file.Measures.MaxBy(m => Units(m.Value.Other)).Key;

    private static int Units(string text) => Fit.Measure(text).Units;

    private static string OutsideGsm7(string text) =>
        string.Join(' ', text.EnumerateRunes().Select(r => r.ToString()).Distinct()
            .Where(letter => Fit.Measure(letter).Encoding == TextEncoding.Ucs2));

    private DialogFault At(Template template, string message) =>
        new(file.Path, template.Line, template.Column, message);
}
