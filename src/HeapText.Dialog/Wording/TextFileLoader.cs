using System.Globalization;
using YamlDotNet.Core;

namespace HeapText.Dialog.Wording;

/// <summary>Reads a text.yml and collects every fault of its form, each with its place.</summary>
internal sealed class TextFileLoader
{
    private static readonly string[] Parts =
    [
        "language", "name", "alphabet", "reviewed", "provenance", "forms", "weekdays", "months", "hours", "measures",
        "materials", "crops", "causes", "actions", "messages",
    ];

    private readonly string _path;
    private readonly List<DialogFault> _faults;

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
        var parts = Entries(root);
        foreach (var (key, node) in parts)
            if (!Parts.Contains(key)) Fault(node, $"unknown part '{key}'; known are {string.Join(", ", Parts)}");
        foreach (var key in Parts)
            if (!parts.ContainsKey(key)) Fault(root, $"the part '{key}' is missing");
        return new TextFile
        {
            Path = _path,
            Language = Scalar(Part("language")),
            Name = Scalar(Part("name")),
            Alphabet = Scalar(Part("alphabet")),
            Reviewed = Scalar(Part("reviewed")) == "true",
            Provenance = Scalar(Part("provenance")),
            Forms = Mapping(Part("forms"), Text),
            Weekdays = Names(Part("weekdays"), 7),
            Months = Names(Part("months"), 12),
            Hours = Hours(Part("hours")),
            Measures = Mapping(Part("measures"), Plural),
            Materials = Mapping(Part("materials"), Scalar),
            Causes = Mapping(Part("causes"), Scalar),
            Actions = Mapping(Part("actions"), Scalar),
            Crops = Mapping(Part("crops"), Scalar),
            Messages = Mapping(Part("messages"), Text),
        };

        MarkedYaml? Part(string key) => parts.GetValueOrDefault(key);
    }

    private void Fault(MarkedYaml at, string message) => _faults.Add(new(_path, at.Line, at.Column, message));

    private Dictionary<string, MarkedYaml> Entries(MarkedYaml.Map map)
    {
        Dictionary<string, MarkedYaml> entries = [];
        foreach (var (key, value) in map.Entries)
            if (!entries.TryAdd(key.Value, value)) Fault(key, $"'{key.Value}' stands twice");
        return entries;
    }

    // A part that is missing was told of already, and is read as empty.
    private Dictionary<string, T> Mapping<T>(MarkedYaml? node, Func<MarkedYaml, T> read)
    {
        if (node is MarkedYaml.Map map) return Entries(map).ToDictionary(e => e.Key, e => read(e.Value));
        if (node is not null) Fault(node, "give a mapping of keys to texts");
        return [];
    }

    private string Scalar(MarkedYaml? node)
    {
        if (node is MarkedYaml.Text text) return text.Value;
        if (node is not null) Fault(node, "give a text");
        return "";
    }

    private Template Text(MarkedYaml node)
    {
        var words = node;
        if (node is MarkedYaml.Map map)
        {
            var entries = Entries(map);
            if (entries.Keys.FirstOrDefault(key => key is not ("text" or "note")) is { } unknown)
                Fault(node, $"unknown '{unknown}'; a message has 'text' and 'note'");
            words = entries.GetValueOrDefault("text", new MarkedYaml.Text("", node.Line, node.Column));
            if (entries.TryGetValue("note", out var note)) Scalar(note);
        }
        var text = Scalar(words);
        if (text.Length == 0) Fault(words, "the text is empty");
        if (!Template.TryParse(text, words.Line, words.Column, out var template))
            Fault(words, "a brace has no partner");
        return template;
    }

    private PluralForms Plural(MarkedYaml node)
    {
        if (node is MarkedYaml.Map map)
        {
            var entries = Entries(map);
            if (entries.Count == 2 && entries.TryGetValue("one", out var one)
                && entries.TryGetValue("other", out var other))
                return new PluralForms(Scalar(one), Scalar(other));
        }
        Fault(node, "a measure has 'one' and 'other'");
        return new PluralForms("", "");
    }

    private List<string> Names(MarkedYaml? node, int count)
    {
        var names = node is MarkedYaml.List list ? list.Items.Select(Scalar).ToList() : [];
        if (node is not null && names.Count != count) Fault(node, $"give {count} names, not {names.Count}");
        return names;
    }

    private Dictionary<int, string> Hours(MarkedYaml? node)
    {
        Dictionary<int, string> hours = [];
        foreach (var (key, words) in Mapping(node, Scalar))
        {
            if (int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour < 24)
                hours[hour] = words;
            else
                Fault(node!, $"'{key}' is not an hour from 0 to 23");
        }
        return hours;
    }
}
