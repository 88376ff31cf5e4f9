using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Wording;

/// <summary>Fills each message of a language with the longest values it can meet and measures it.</summary>
internal sealed class WorstCase(Phrasebook book, TextFile file)
{
    public IEnumerable<DialogFault> Faults() => Catalogue.All.SelectMany(FaultsOf);

    /// <summary>The message with the longest values it can meet.</summary>
    public string TextOf(MessageSpec message)
    {
        var filling = message.Slots.Select(slot => (slot.Name, Longest(message, slot.Kind))).ToArray();
        var prefix = message.OfHeap ? book.HeapPrefix(file.Language, 9) : "";
        return prefix + book.Say(file.Language, message, filling);
    }

    private IEnumerable<DialogFault> FaultsOf(MessageSpec message)
    {
        var template = file.Messages[message.Key];
        var text = TextOf(message);
        var fitting = Fit.Measure(text);
        // How a language offers itself stands in messages of all the others, and must not double their parts.
        var mustBeGsm7 = file.Alphabet == "GSM7" || message == Catalogue.LanguageHint
            || message == Catalogue.LanguageName;
        if (fitting.Encoding == TextEncoding.Ucs2 && mustBeGsm7)
            yield return At(template,
                $"'{message.Key}' has letters outside the GSM 7-bit alphabet: {OutsideGsm7(text)}");
        if (fitting.Segments > message.Segments)
            yield return At(template,
                $"'{message.Key}' takes {fitting.Segments} segments ({fitting.Units} units), "
                + $"allowed {message.Segments}; longest: {text}");
        if (MostUnits(message, fitting.Encoding) is { } most && fitting.Units > most)
            yield return At(template, $"'{message.Key}' takes {fitting.Units} units on a line of keys, allowed {most}");
    }

    /// <summary>Most units of what stands on a screen beside other things; null for a message of its own.</summary>
    private static int? MostUnits(MessageSpec message, TextEncoding encoding) =>
        !Catalogue.Keys.Contains(message) ? null : encoding == TextEncoding.Gsm7 ? 16 : 12;

    private Value Longest(MessageSpec message, SlotKind kind) => kind switch
    {
        SlotKind.Number => new Value.Number(message.Slots.Any(s => s.Name is "code" or "plants") ? 9999 : 20),
        SlotKind.Buckets => new Value.Buckets(20.5m),
        SlotKind.Metres => new Value.Metres(1.5),
        SlotKind.Date => new Value.Date(LongestDate()),
        SlotKind.Hour => new Value.Hour(file.Hours.MaxBy(h => Units(h.Value)).Key),
        SlotKind.Key => new Value.Name("#"),
        SlotKind.Name => new Value.Name(new string('m', Phrasebook.LongestName)),
        SlotKind.Material => new Value.Material(LongestMaterial()),
        SlotKind.Materials => new Value.Materials([LongestMaterial()]) { LeftOut = 9 },
        SlotKind.Portions => new Value.Portions([new Portion(LongestMaterial(), 99.5m, LongestMeasure())]),
        SlotKind.Measure => new Value.Measure(LongestMeasure()),
        SlotKind.Measured => new Value.Measured(9999, "handful"),
        SlotKind.Cause => new Value.Cause(file.Causes.MaxBy(c => Units(c.Value)).Key),
        SlotKind.Actions => new Value.Actions(
            [.. file.Actions.OrderByDescending(a => Units(a.Value)).Take(2).Select(a => a.Key)]),
        SlotKind.Crop => new Value.Crop(file.Crops.MaxBy(c => Units(c.Value)).Key),
        SlotKind.CropChoices => new Value.Choices(
            [.. AnswerReader.Known["crop"].Select(key => new Value.Crop(key))]),
        SlotKind.Money => new Value.Money(88_000_000, new string('M', Value.Money.LongestCurrency)),
        SlotKind.MaterialChoices => new Value.Choices(
            [.. StepByStep.MenuOf(message).Select(key => new Value.Material(key))]),
        SlotKind.MeasureChoices => new Value.Choices(
            [.. StepByStep.MeasuresInText.Select(key => new Value.Measure(key))]),
        SlotKind.HourChoices => new Value.Choices([.. ReminderHours.All.Select(hour => new Value.Hour(hour))]),
        SlotKind.HeapChoices => new Value.Heaps([.. Enumerable.Repeat((99, LongestDate()), Farmer.MostHeaps)]),
        SlotKind.LanguageHints => new Value.LanguageHints(
            [.. book.Languages.Where(language => language != file.Language)]),
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
