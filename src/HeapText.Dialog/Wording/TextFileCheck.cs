using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Wording;

/// <summary>Checks that a text.yml holds every key it must, none besides, and each with its placeholders.</summary>
internal sealed class TextFileCheck(
    TextFile file, IReadOnlyCollection<string> materials, IReadOnlyCollection<string> measures)
{
    /// <summary>The forms every language has, with their placeholders.</summary>
    private static readonly Dictionary<string, string[]> FormSlots = new()
    {
        ["and"] = [],
        ["more"] = ["count"],
        ["whole"] = ["count"],
        ["whole-and-half"] = ["count"],
        ["portion"] = ["amount", "measure", "material"],
        ["portion-half"] = ["measure", "material"],
        ["measured"] = ["amount", "measure"],
        ["measured-half"] = ["measure"],
        ["bucket-half"] = [],
        ["metres"] = ["length"],
        ["date"] = ["weekday", "day", "month"],
        ["heap-built"] = ["number", "date"],
        ["heap-prefix"] = ["number"],
    };

    /// <summary>Forms with one placeholder of several; the second may be left out.</summary>
    private static readonly Dictionary<string, string[]> FreeFormSlots = new()
    {
        ["turning"] = [Spoken.Ordinal, Spoken.OrdinalFeminine],
        ["first-of-month"] = [],
        ["decimal-mark"] = [],
        ["comma"] = [],
    };

    private static readonly string[] CountSlots = ["count", Spoken.Number, Spoken.NumberFeminine];

    public IEnumerable<DialogFault> KeyFaults() =>
    [
        .. file.Alphabet is "GSM7" or "UCS2" ? [] : new[] { Fault("alphabet", null, "alphabet is GSM7 or UCS2") },
        .. Templates(file.Forms.Where(form => !FreeFormSlots.ContainsKey(form.Key)).ToDictionary(), FormSlots,
            "forms", "form"),
        .. file.Forms.ContainsKey("turning") ? [] : new[] { Fault("forms", null, "the form 'turning' is missing") },
        .. file.Forms.Where(form => FreeFormSlots.ContainsKey(form.Key))
            .SelectMany(form => OneOf(form.Key, form.Value, FreeFormSlots[form.Key])),
        .. Templates(file.Messages, Catalogue.All.ToDictionary(m => m.Key, m => m.Slots.Select(s => s.Name).ToArray()),
            "messages", "message"),
        .. Keys(file.Materials.Keys, materials, "materials", "material"),
        .. Plurals(file.Measures, measures, "measures", "measure", []),
        .. Plurals(file.Counts, Catalogue.Counts, "counts", "count", CountSlots),
        .. Keys(file.Causes.Keys, Catalogue.Causes, "causes", "cause"),
        .. Keys(file.Actions.Keys, Catalogue.Actions, "actions", "action"),
        .. Keys(file.Crops.Keys, AnswerReader.Known["crop"], "crops", "crop"),
        .. Spelling("numbers", file.Numbers, Spoken.MostInWords + 1),
        .. Spelling("ordinals", file.Ordinals, Spoken.MostInWords),
        .. file.Texts.Where(IsSentInGsm7).SelectMany(OutsideGsm7),
        .. Keys(file.Hours.Keys.Select(h => $"{h}"), ReminderHours.All.Select(h => $"{h}"), "hours", "hour"),
    ];

    // How a language names and offers itself stands in messages of all the others, and must not double their parts.
    private bool IsSentInGsm7(FarmerText text) => file.Alphabet == "GSM7" || (text.Section == "messages"
        && (text.Key == Catalogue.LanguageHint.Key || text.Key == Catalogue.LanguageName.Key));

    private IEnumerable<DialogFault> OutsideGsm7(FarmerText text)
    {
        var letters = text.Text.EnumerateRunes().Select(rune => rune.ToString()).Distinct()
            .Where(letter => !file.Replace.Covers(letter) && Fit.Measure(letter).Encoding == TextEncoding.Ucs2);
        if (string.Join(' ', letters) is { Length: > 0 } outside)
            yield return new DialogFault(file.Path, text.Line, text.Column,
                $"'{text.Key}' has letters outside the GSM 7-bit alphabet: {outside}");
    }

    private IEnumerable<DialogFault> Templates(
        IReadOnlyDictionary<string, Template> found, Dictionary<string, string[]> wanted, string part, string kind)
    {
        foreach (var fault in Keys(found.Keys, wanted.Keys, part, kind)) yield return fault;
        foreach (var (key, template) in found)
        {
            if (!wanted.TryGetValue(key, out var slots)) continue;
            foreach (var slot in template.Slots.Distinct())
                if (!slots.Contains(slot)) yield return At(template, $"'{key}' has no placeholder {{{slot}}}");
            foreach (var slot in slots)
                if (!template.Slots.Contains(slot))
                    yield return At(template, $"'{key}' lacks the placeholder {{{slot}}}");
        }
    }

    private IEnumerable<DialogFault> OneOf(string key, Template template, string[] slots)
    {
        foreach (var slot in template.Slots.Except(slots))
            yield return At(template, $"'{key}' has no placeholder {{{slot}}}");
        if (slots.Length > 0 && !template.Slots.Intersect(slots).Any())
            yield return At(template, $"'{key}' lacks the placeholder {{{slots[0]}}}");
    }

    private IEnumerable<DialogFault> Plurals(IReadOnlyDictionary<string, PluralForms> found,
        IReadOnlyCollection<string> wanted, string part, string kind, string[] slots)
    {
        foreach (var fault in Keys(found.Keys, wanted, part, kind)) yield return fault;
        foreach (var (key, plural) in found)
        {
            foreach (var category in file.Plurals.Categories.Except(plural.Forms.Keys))
                yield return Fault(part, key,
                    $"'{key}' lacks the plural form '{category}', which {file.Language} needs");
            foreach (var category in plural.Forms.Keys.Except(file.Plurals.Categories))
                yield return Fault(part, key,
                    $"'{key}' has the plural form '{category}', which {file.Language} has not");
            foreach (var (category, template) in plural.Forms)
            {
                foreach (var slot in template.Slots.Except(slots))
                    yield return At(template, $"'{key}' has no placeholder {{{slot}}}");
                if (category == PluralRules.Other && slots.Length > 0 && !template.Slots.Intersect(slots).Any())
                    yield return At(template, $"'{key}' lacks the placeholder {{{slots[0]}}}");
            }
        }
    }

    private IEnumerable<DialogFault> Keys(
        IEnumerable<string> found, IEnumerable<string> wanted, string part, string kind)
    {
        foreach (var key in wanted.Except(found)) yield return Fault(part, null, $"the {kind} '{key}' is missing");
        foreach (var key in found.Except(wanted)) yield return Fault(part, key, $"there is no {kind} '{key}'");
    }

    private IEnumerable<DialogFault> Spelling(string part, IReadOnlyList<string> words, int least)
    {
        if (words.Count == 0 && Spoken.IsKnownToHumanizer(file.Language)) yield break;
        if (words.Count < least)
            yield return Fault(part, null, $"the {part} of {file.Language} need {least} words, not {words.Count}");
    }

    private DialogFault Fault(string part, string? key, string message) => file.FaultAt(part, key, message);

    private DialogFault At(Template template, string message) =>
        new(file.Path, template.Line, template.Column, message);
}
