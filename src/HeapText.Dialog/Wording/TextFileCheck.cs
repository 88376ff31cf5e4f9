using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;

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
        ["buckets"] = ["amount"],
        ["bucket-one"] = [],
        ["bucket-half"] = [],
        ["metres"] = ["length"],
        ["date"] = ["weekday", "day", "month"],
        ["heap-built"] = ["number", "date"],
        ["heap-prefix"] = ["number"],
    };

    public IEnumerable<DialogFault> KeyFaults() =>
    [
        .. file.Alphabet is "GSM7" or "UCS2" ? [] : new[] { Fault("alphabet is GSM7 or UCS2") },
        .. Templates(file.Forms, FormSlots, "form"),
        .. Templates(file.Messages,
            Catalogue.All.ToDictionary(m => m.Key, m => m.Slots.Select(s => s.Name).ToArray()), "message"),
        .. Keys(file.Materials.Keys, materials, "material"),
        .. Keys(file.Measures.Keys, measures, "measure"),
        .. Keys(file.Causes.Keys, Catalogue.Causes, "cause"),
        .. Keys(file.Actions.Keys, Catalogue.Actions, "action"),
        .. Keys(file.Crops.Keys, AnswerReader.Known["crop"], "crop"),
        .. Keys(file.Hours.Keys.Select(h => $"{h}"), ReminderHours.All.Select(h => $"{h}"), "hour"),
    ];

    private IEnumerable<DialogFault> Templates(
        IReadOnlyDictionary<string, Template> found, Dictionary<string, string[]> wanted, string kind)
    {
        foreach (var fault in Keys(found.Keys, wanted.Keys, kind)) yield return fault;
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

    private IEnumerable<DialogFault> Keys(IEnumerable<string> found, IEnumerable<string> wanted, string kind)
    {
        foreach (var key in wanted.Except(found)) yield return Fault($"the {kind} '{key}' is missing");
        foreach (var key in found.Except(wanted)) yield return Fault($"there is no {kind} '{key}'");
    }

    private DialogFault Fault(string message) => new(file.Path, 1, 1, message);

    private DialogFault At(Template template, string message) =>
        new(file.Path, template.Line, template.Column, message);
}
