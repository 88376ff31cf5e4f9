using HeapText.Carriers.Mapped;

namespace HeapText.Service.Startup;

/// <summary>One section of a mapping, and the faults found in it.</summary>
internal sealed class MappedSection(IConfigurationSection section, List<string> faults)
{
    /// <summary>True when the settings hold it.</summary>
    public bool IsThere => section.Exists();

    /// <summary>Keys of what stands in it.</summary>
    public IEnumerable<string> Keys => section.GetChildren().Select(child => child.Key);

    /// <summary>A section inside it.</summary>
    public MappedSection Part(string key) => new(section.GetSection(key), faults);

    /// <summary>Adds a fault of a setting in it; what is wrong and what to write follow its name.</summary>
    public void Fault(string key, string why) => faults.Add($"{section.Path}:{key} {why}.");

    /// <summary>Adds a fault of the whole section.</summary>
    public void Fault(string why) => faults.Add($"{section.Path} {why}.");

    /// <summary>Names each setting in it that is none of the known ones, and a value where a section belongs.</summary>
    public void Know(params string[] known)
    {
        if (SettingsReader.Filled(section.Value) is not null)
            Fault($"is a section and holds no value itself; write {section.Path}:{known[0]} and so on");
        SettingsReader.RefuseOthers(section, known, faults);
    }

    /// <summary>A setting as it was written; null when it is not there.</summary>
    public string? Raw(string key)
    {
        if (section.GetSection(key).GetChildren().Any()) Fault(key, "is no section; write a text");
        return section[key];
    }

    /// <summary>A setting without white space around it; null when it is not there or empty.</summary>
    public string? Text(string key) => SettingsReader.Filled(Raw(key));

    /// <summary>A setting that must be there; empty when it is not.</summary>
    public string Wanted(string key, string fix)
    {
        var text = Text(key);
        if (text is null) Fault(key, $"is missing; {fix}");
        return text ?? "";
    }

    /// <summary>One of several words; the first when the setting is not there.</summary>
    public string OneOf(string key, params string[] words)
    {
        if (Text(key) is not { } text) return words[0];
        if (words.Contains(text, StringComparer.Ordinal)) return text;
        Fault(key, $"is none of its words; write one of {string.Join(", ", words)}");
        return words[0];
    }

    /// <summary>Words parted by commas, in order.</summary>
    public IReadOnlyList<string> List(string key) =>
        Text(key)?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];

    /// <summary>Where a field stands that may be left out; null when it is, or when it cannot be read.</summary>
    public Field? Field(string key)
    {
        if (Text(key) is not { } text) return null;
        var field = Carriers.Mapped.Field.Parse(key, text, out var fault);
        if (field is null) Fault(key, fault);
        return field;
    }

    /// <summary>Where a field stands that must be given; one that holds nothing when it is not.</summary>
    public Field WantedField(string key) =>
        Wanted(key, "say where it stands, like json:/sender, form:sender, query:sender or header:X-Sender").Length == 0
            ? new Field(key, [])
            : Field(key) ?? new Field(key, []);

    /// <summary>Where a field stands that tells messages apart, and so is never the same for all.</summary>
    public Field WantedOwn(string key)
    {
        var field = WantedField(key);
        if (field.Places.Any(place => place is Place.Constant))
            Fault(key, "is the same for every message; say where the gateway writes it");
        return field;
    }

    /// <summary>The headers of a part, each a template.</summary>
    public IReadOnlyList<KeyValuePair<string, Template>> Headers(IReadOnlyCollection<string> names)
    {
        List<KeyValuePair<string, Template>> headers = [];
        var part = Part("Headers");
        foreach (var name in part.Keys)
        {
            var value = Template.Parse(part.Raw(name) ?? "");
            if (!HeaderText.IsName(name) || Reserved.Contains(name))
                part.Fault(name, "is no header that can be set here; take it out");
            else if (!HeaderText.IsValue(value.Text))
                part.Fault(name, "holds more than printable ASCII; write only that in a header");
            else if (TemplateCheck.Unknown(value, names) is { } unknown)
                part.Fault(name, unknown);
            headers.Add(KeyValuePair.Create(name, value));
        }

        return headers;
    }

    // Those the server or the client writes itself.
    private static readonly HashSet<string> Reserved = new(StringComparer.OrdinalIgnoreCase)
    {
        "Connection", "Content-Length", "Content-Type", "Content-Encoding", "Date", "Expect", "Host", "Keep-Alive",
        "Proxy-Authorization", "Server", "TE", "Trailer", "Transfer-Encoding", "Upgrade",
    };
}
