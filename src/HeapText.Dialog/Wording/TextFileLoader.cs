using System.Globalization;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace HeapText.Dialog.Wording;

/// <summary>Reads a text.yml and collects every fault of its form, each with its place.</summary>
internal sealed class TextFileLoader
{
    private readonly string _file;
    private readonly List<DialogFault> _faults;

    private TextFileLoader(string file, List<DialogFault> faults) => (_file, _faults) = (file, faults);

    /// <summary>The file's content; null when it is not YAML or lacks a whole part.</summary>
    public static TextFile? Load(string path, string shownAs, List<DialogFault> faults)
    {
        var loader = new TextFileLoader(shownAs, faults);
        var stream = new YamlStream();
        try
        {
            using var reader = File.OpenText(path);
            stream.Load(reader);
        }
        catch (YamlException fault)
        {
            faults.Add(new(shownAs, (int)fault.Start.Line, (int)fault.Start.Column, $"not YAML: {fault.Message}"));
            return null;
        }
        catch (IOException)
        {
            faults.Add(new(shownAs, 1, 1, "the file is missing or cannot be read"));
            return null;
        }
        if (stream.Documents is [{ RootNode: YamlMappingNode root }]) return loader.Read(root);
        faults.Add(new(shownAs, 1, 1, "give one mapping of keys to values"));
        return null;
    }

    private TextFile Read(YamlMappingNode root)
    {
        Dictionary<string, YamlNode> parts = Entries(root);
        string[] known =
        [
            "language", "name", "alphabet", "reviewed", "provenance", "forms", "weekdays", "months", "hours",
            "measures", "materials", "messages",
        ];
        foreach (var (key, node) in parts)
            if (!known.Contains(key)) Fault(node, $"unknown part '{key}'; known are {string.Join(", ", known)}");
        return new TextFile
        {
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
            Messages = Mapping(Part("messages"), Text),
        };

        YamlNode Part(string key)
        {
            if (parts.TryGetValue(key, out var node)) return node;
            Fault(root, $"the part '{key}' is missing");
            return new YamlScalarNode("");
        }
    }

    private void Fault(YamlNode at, string message) =>
        _faults.Add(new(_file, Math.Max(1, (int)at.Start.Line), Math.Max(1, (int)at.Start.Column), message));

    private Dictionary<string, YamlNode> Entries(YamlMappingNode mapping)
    {
        Dictionary<string, YamlNode> entries = [];
        foreach (var (key, value) in mapping)
            if (!entries.TryAdd(Scalar(key), value)) Fault(key, $"'{key}' stands twice");
        return entries;
    }

    private Dictionary<string, T> Mapping<T>(YamlNode node, Func<YamlNode, T> read)
    {
        if (node is YamlMappingNode mapping) return Entries(mapping).ToDictionary(e => e.Key, e => read(e.Value));
        if (node.Start.Line > 0) Fault(node, "give a mapping of keys to texts");
        return [];
    }

    private string Scalar(YamlNode node)
    {
        if (node is YamlScalarNode { Value: { } value }) return value;
        Fault(node, "give a text");
        return "";
    }

    private Template Text(YamlNode node)
    {
        var (text, note) = (node, (string?)null);
        if (node is YamlMappingNode mapping)
        {
            var entries = Entries(mapping);
            foreach (var key in entries.Keys)
                if (key is not ("text" or "note")) Fault(node, $"unknown '{key}'; a message has 'text' and 'note'");
            text = entries.GetValueOrDefault("text", new YamlScalarNode(""));
            note = entries.TryGetValue("note", out var said) ? Scalar(said) : null;
        }
        var words = Scalar(text);
        if (words.Length == 0) Fault(node, "the text is empty");
        if (!Template.TryParse(words, (int)node.Start.Line, (int)node.Start.Column, note, out var template))
            Fault(text, "a brace has no partner");
        return template;
    }

    private PluralForms Plural(YamlNode node)
    {
        if (node is YamlMappingNode mapping)
        {
            var entries = Entries(mapping);
            if (entries.Count == 2 && entries.TryGetValue("one", out var one)
                && entries.TryGetValue("other", out var other))
                return new PluralForms(Scalar(one), Scalar(other));
        }
        Fault(node, "a measure has 'one' and 'other'");
        return new PluralForms("", "");
    }

    private List<string> Names(YamlNode node, int count)
    {
        var names = node is YamlSequenceNode list ? list.Select(Scalar).ToList() : [];
        if (names.Count != count) Fault(node, $"give {count} names, not {names.Count}");
        while (names.Count < count) names.Add("");
        return names;
    }

    private Dictionary<int, string> Hours(YamlNode node)
    {
        Dictionary<int, string> hours = [];
        foreach (var (key, words) in Mapping(node, Scalar))
        {
            if (int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour < 24)
                hours[hour] = words;
            else
                Fault(node, $"'{key}' is not an hour from 0 to 23");
        }
        return hours;
    }
}
