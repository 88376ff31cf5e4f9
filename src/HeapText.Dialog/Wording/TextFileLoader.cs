using System.Globalization;
using HeapText.Dialog.Text;
using YamlDotNet.Core;

namespace HeapText.Dialog.Wording;

/// <summary>Reads a text.yml and collects every fault of its form, each with its place.</summary>
internal sealed class TextFileLoader
{
    /// <summary>The parts of a text.yml; those of <see cref="MayMiss"/> may be left out.</summary>
    public static readonly string[] Parts =
    [
        "language", "name", "alphabet", "reviewed", "provenance", "plurals", "avoid", "replace", "keep", "numbers",
        "ordinals", "forms", "counts", "weekdays", "months", "hours", "measures", "materials", "crops", "causes",
        "actions", "messages",
    ];

    /// <summary>Parts that only some languages need.</summary>
    public static readonly string[] MayMiss = ["replace", "keep", "numbers", "ordinals"];

    private readonly string _path;
    private readonly List<DialogFault> _faults;
    private readonly Dictionary<(string Part, string? Key), (int Line, int Column)> _places = [];
    private readonly List<FarmerText> _texts = [];
    private readonly HashSet<string> _noted = [];

    private TextFileLoader(string path, List<DialogFault> faults) => (_path, _faults) = (path, faults);

    /// <summary>The file's content; null when it is not YAML or cannot be read.</summary>
    public static TextFile? Load(string path, List<DialogFault> faults)
    {
        try
        {
            using var reader = File.OpenText(path);
            var loader = new TextFileLoader(path, faults);
            if (MarkedYaml.Read(reader) is MarkedYaml.Map root) return loader.Read(root);
            faults.Add(new(path, 1, 1, "give one mapping of keys to values"));
        }
        catch (YamlException fault)
        {
            faults.Add(new(path, (int)fault.Start.Line, (int)fault.Start.Column, $"not YAML: {fault.Message}"));
        }
        catch (IOException)
        {
            faults.Add(new(path, 1, 1, "the file is missing or cannot be read"));
        }
        return null;
    }

    private TextFile Read(MarkedYaml.Map root)
    {
        var parts = Entries(root, null);
        foreach (var (key, _) in root.Entries)
            if (!Parts.Contains(key.Value)) Fault(key, $"unknown part '{key.Value}'; known are {Join(Parts)}");
        foreach (var key in Parts.Except(MayMiss))
            if (!parts.ContainsKey(key)) Fault(root, $"the part '{key}' is missing");
        return new TextFile
        {
            Path = _path,
            Language = Scalar(Part("language")),
            Name = Scalar(Part("name")),
            Alphabet = Scalar(Part("alphabet")),
            Reviewed = YesOrNo(Part("reviewed")),
            Provenance = Filled(Part("provenance")),
            Plurals = ReadPlurals(Part("plurals")),
            Avoid = [.. Mapping("avoid", parts, ReadAvoided).Values],
            Replace = new Replacements(ReadLetters(parts), Names("keep", Part("keep"), null)),
            Numbers = Names("numbers", Part("numbers"), null),
            Ordinals = Names("ordinals", Part("ordinals"), null),
            Forms = Mapping("forms", parts, (key, node) => Text("forms", key, node)),
            Counts = Mapping("counts", parts, (key, node) => Plural("counts", key, node)),
            Weekdays = Names("weekdays", Part("weekdays"), 7),
            Months = Names("months", Part("months"), 12),
            Hours = Hours(parts),
            Measures = Mapping("measures", parts, (key, node) => Plural("measures", key, node)),
            Materials = Words("materials", parts),
            Causes = Words("causes", parts),
            Actions = Words("actions", parts),
            Crops = Words("crops", parts),
            Messages = Mapping("messages", parts, Message),
            Noted = _noted,
            Texts = _texts,
            Places = _places,
        };

        MarkedYaml? Part(string key) => parts.GetValueOrDefault(key);
    }

    private static string Join(IEnumerable<string> words) => string.Join(", ", words);

    private void Fault(MarkedYaml at, string message) => _faults.Add(new(_path, at.Line, at.Column, message));

    private Dictionary<string, MarkedYaml> Entries(MarkedYaml.Map map, string? part)
    {
        Dictionary<string, MarkedYaml> entries = [];
        foreach (var (key, value) in map.Entries)
        {
            if (!entries.TryAdd(key.Value, value)) Fault(key, $"'{key.Value}' stands twice");
            var place = part is null ? (key.Value, (string?)null) : (part, key.Value);
            _places.TryAdd(place, (key.Line, key.Column));
        }
        return entries;
    }

    // A part that is missing was told of already, and is read as empty.
    private Dictionary<string, T> Mapping<T>(
        string part, Dictionary<string, MarkedYaml> parts, Func<string, MarkedYaml, T> read)
    {
        var node = parts.GetValueOrDefault(part);
        if (node is MarkedYaml.Map map) return Entries(map, part).ToDictionary(e => e.Key, e => read(e.Key, e.Value));
        if (node is not null) Fault(node, "give a mapping of keys to texts");
        return [];
    }

    private Dictionary<string, string> Words(string part, Dictionary<string, MarkedYaml> parts) =>
        Mapping(part, parts, (key, node) => Seen(part, key, Filled(node), node));

    private string Seen(string part, string key, string text, MarkedYaml node)
    {
        _texts.Add(new FarmerText(part, key, text, node.Line, node.Column));
        return text;
    }

    private string Scalar(MarkedYaml? node)
    {
        if (node is MarkedYaml.Text text) return text.Value;
        if (node is not null) Fault(node, "give a text");
        return "";
    }

    private string Filled(MarkedYaml? node)
    {
        var text = Scalar(node);
        if (node is MarkedYaml.Text && text.Length == 0) Fault(node, "the text is empty");
        return text;
    }

    private bool YesOrNo(MarkedYaml? node)
    {
        var text = Scalar(node);
        if (node is not null && text is not ("true" or "false")) Fault(node, "write true or false");
        return text == "true";
    }

    private PluralRules ReadPlurals(MarkedYaml? node)
    {
        var rules = new PluralRules();
        if (node is MarkedYaml.Map map)
        {
            foreach (var (category, rule) in Entries(map, "plurals"))
                if (!rules.TryAdd(category, Scalar(rule)))
                    Fault(rule, $"'{category}' is no plural rule; write one like one: i = 1 and v = 0");
        }
        else if (node is not null) Fault(node, "give plural rules, like one: i = 1 and v = 0; {} where there are none");
        return rules;
    }

    private AvoidedWord ReadAvoided(string pattern, MarkedYaml instead) => new(pattern, Filled(instead));

    private Dictionary<char, string> ReadLetters(Dictionary<string, MarkedYaml> parts)
    {
        Dictionary<char, string> letters = [];
        foreach (var (key, plain) in Mapping("replace", parts, (_, node) => Scalar(node)))
        {
            var place = _places[("replace", key)];
            if (key.Length != 1 || Gsm7.Cost(key[0]) > 0)
                _faults.Add(new(_path, place.Line, place.Column,
                    $"'{key}' is not one letter outside the GSM 7-bit alphabet"));
            else if (plain.Length == 0 || plain.Any(c => Gsm7.Cost(c) == 0))
                _faults.Add(new(_path, place.Line, place.Column, $"'{plain}' is not in the GSM 7-bit alphabet"));
            else letters[key[0]] = plain;
        }
        return letters;
    }

    private Template Message(string key, MarkedYaml node)
    {
        if (node is not MarkedYaml.Map map) return Text("messages", key, node);
        Dictionary<string, MarkedYaml> entries = [];
        foreach (var (name, value) in map.Entries)
        {
            if (name.Value is not ("text" or "note"))
                Fault(name, $"unknown '{name.Value}'; a message has 'text' and 'note'");
            else if (!entries.TryAdd(name.Value, value)) Fault(name, $"'{name.Value}' stands twice");
        }
        if (entries.TryGetValue("note", out var note) && Filled(note).Length > 0) _noted.Add(key);
        var missing = new MarkedYaml.Text("", node.Line, node.Column);
        return Text("messages", key, entries.GetValueOrDefault("text", missing));
    }

    private Template Text(string part, string key, MarkedYaml node)
    {
        var text = Seen(part, key, Filled(node), node);
        if (!Template.TryParse(text, node.Line, node.Column, out var template)) Fault(node, "a brace has no partner");
        return template;
    }

    private PluralForms Plural(string part, string key, MarkedYaml node)
    {
        Dictionary<string, Template> forms = [];
        if (node is MarkedYaml.Map map)
            foreach (var (category, value) in map.Entries)
                if (!forms.TryAdd(category.Value, Text(part, key, value)))
                    Fault(category, $"'{category.Value}' stands twice");
        if (forms.ContainsKey(PluralRules.Other)) return new PluralForms(forms);
        Fault(node, $"'{key}' needs a word for each plural form, like {{one: bucket, other: buckets}}");
        Template.TryParse("", node.Line, node.Column, out var empty);
        forms[PluralRules.Other] = empty;
        return new PluralForms(forms);
    }

    private List<string> Names(string part, MarkedYaml? node, int? count)
    {
        if (node is not MarkedYaml.List list)
        {
            if (node is not null) Fault(node, "give a list of words");
            return [];
        }
        if (count is { } wanted && list.Items.Count != wanted)
            Fault(node, $"give {wanted} names, not {list.Items.Count}");
        return [.. list.Items.Select((item, i) =>
            part == "keep" ? Filled(item) : Seen(part, $"{i + 1}", Filled(item), item))];
    }

    private Dictionary<int, string> Hours(Dictionary<string, MarkedYaml> parts)
    {
        Dictionary<int, string> hours = [];
        foreach (var (key, words) in Words("hours", parts))
        {
            if (int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour < 24)
                hours[hour] = words;
            else
                _faults.Add(new(_path, _places[("hours", key)].Line, _places[("hours", key)].Column,
                    $"'{key}' is not an hour from 0 to 23"));
        }
        return hours;
    }
}
