using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Text;
using NodaTime;

namespace HeapText.Dialog.Wording;

/// <summary>Fills each message of a language with the longest values it can meet and measures it.</summary>
internal sealed class WorstCase(Phrasebook book, TextFile file)
{
    /// <summary>Each message at its longest.</summary>
    public IEnumerable<(MessageSpec Message, string Text)> Longest() =>
        Catalogue.All.Select(message => (message, TextOf(message)));

    public IEnumerable<DialogFault> Faults() => Catalogue.All.SelectMany(FaultsOf);

    /// <summary>The message with the longest values it can meet.</summary>
    public string TextOf(MessageSpec message)
    {
        var filling = message.Slots.Select(slot => (slot.Name, Longest(message, slot))).ToArray();
        var prefix = message.OfHeap ? book.HeapPrefix(file.Language, 9) : "";
        return prefix + book.Say(file.Language, message, filling);
    }

    private IEnumerable<DialogFault> FaultsOf(MessageSpec message)
    {
        var template = file.Messages[message.Key];
        var text = TextOf(message);
        var fitting = Fit.Measure(text);
        var most = message.SegmentsIn(file.Alphabet);
        if (fitting.Segments > most)
            yield return At(template,
                $"'{message.Key}' takes {fitting.Segments} segments ({fitting.Units} units), "
                + $"allowed {most}; longest: {text}");
        if (MostUnits(message, fitting.Encoding) is { } units && fitting.Units > units)
            yield return At(template,
                $"'{message.Key}' takes {fitting.Units} units on a line of keys, allowed {units}");
    }

    /// <summary>Most units of what stands on a screen beside other things; null for a message of its own.</summary>
    private static int? MostUnits(MessageSpec message, TextEncoding encoding) =>
        !Catalogue.Keys.Contains(message) ? null : encoding == TextEncoding.Gsm7 ? 16 : 12;

    private Value Longest(MessageSpec message, Slot slot) => slot.Kind switch
    {
        SlotKind.Number => new Value.Number(slot.Name is "code" or "plants" ? 9999 : 99),
        SlotKind.Count => LongestCount(slot.Name),
        SlotKind.Ordinal => Longest(Enumerable.Range(1, Spoken.MostInWords).Select(place => new Value.Ordinal(place))),
        SlotKind.Buckets => Longest([new Value.Buckets(1.5m), new Value.Buckets(20.5m)]),
        SlotKind.Metres => new Value.Metres(1.5),
        SlotKind.Date => new Value.Date(LongestDate()),
        SlotKind.Hour => new Value.Hour(file.Hours.MaxBy(h => Units(h.Value)).Key),
        SlotKind.Key => new Value.Name("#"),
        SlotKind.Name => new Value.Name(new string('m', Phrasebook.LongestName)),
        SlotKind.Material => new Value.Material(LongestMaterial()),
        SlotKind.Materials => new Value.Materials([LongestMaterial()]) { LeftOut = 9 },
        SlotKind.Portions => new Value.Portions([new Portion(LongestMaterial(), 99.5m, LongestMeasure())]),
        SlotKind.Measure => new Value.Measure(LongestMeasure()),
        SlotKind.Measured => Longest(
            [new Value.Measured(9.5m, "handful"), new Value.Measured(9999, "handful"),
                new Value.Measured(9.5m, "bucket"), new Value.Measured(9999, "bucket")]),
        SlotKind.Cause => new Value.Cause(file.Causes.MaxBy(c => Units(c.Value)).Key),
        SlotKind.Actions => new Value.Actions(
            [.. file.Actions.OrderByDescending(a => Units(a.Value)).Take(2).Select(a => a.Key)]),
        SlotKind.Crop => new Value.Crop(file.Crops.MaxBy(c => Units(c.Value)).Key),
        SlotKind.CropChoices => new Value.Choices(
            [.. AnswerReader.Known["crop"].Select(key => new Value.Crop(key))]),
        SlotKind.Money => new Value.Money(88_000_000, new string('M', Value.Money.LongestCurrency)),
        SlotKind.MaterialChoices => new Value.Choices(
            [.. StepByStep.MenuOf(message).Select(key => new Value.Material(key))]),
        SlotKind.MeantChoices => new Value.Choices(
            [.. file.Materials.OrderByDescending(m => Units(m.Value)).Take(Reading.MostChoices)
                .Select(m => new Value.Material(m.Key))]),
        SlotKind.Words => new Value.Words([new string('m', Phrasebook.LongestName)]),
        SlotKind.MeasureChoices => new Value.Choices(
            [.. StepByStep.MeasuresInText.Select(key => new Value.Measure(key))]),
        SlotKind.HourChoices => new Value.Choices([.. ReminderHours.All.Select(hour => new Value.Hour(hour))]),
        SlotKind.HeapChoices => new Value.Heaps([.. Enumerable.Repeat((99, LongestDate()), Farmer.MostHeaps)]),
        SlotKind.LanguageHints => new Value.LanguageHints(
            [.. book.Languages.Where(language => language != file.Language)]),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private Value LongestCount(string things) => Longest(Enumerable.Range(1, Spoken.MostInWords)
        .Append(things is "pots" or "steps" ? 9999 : 1).Select(number => new Value.Count(things, number)));

    private Value Longest(IEnumerable<Value> values) => values.MaxBy(value => Units(book.Word(file.Language, value)))!;

    private LocalDate LongestDate()
    {
        var start = new LocalDate(2026, 1, 1);
        return Enumerable.Range(0, 365).Select(start.PlusDays).MaxBy(day =>
            Units(file.Weekdays[(int)day.DayOfWeek - 1]) + Units(file.Months[day.Month - 1]) + (day.Day > 9 ? 1 : 0));
    }

    private string LongestMaterial() => file.Materials.MaxBy(m => Units(m.Value)).Key;

    private string LongestMeasure() => file.Measures.MaxBy(m => Units(m.Value.Other.ToString())).Key;

    private static int Units(string text) => Fit.Measure(text).Units;

    private DialogFault At(Template template, string message) =>
        new(file.Path, template.Line, template.Column, message);
}
