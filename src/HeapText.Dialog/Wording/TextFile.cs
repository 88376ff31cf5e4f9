namespace HeapText.Dialog.Wording;

/// <summary>Everything a farmer can be told in one language: dialogs/&lt;language&gt;/text.yml.</summary>
public sealed record TextFile
{
    /// <summary>Where it was read from.</summary>
    public required string Path { get; init; }

    /// <summary>Two-letter code of the language, also the name of its folder.</summary>
    public required string Language { get; init; }

    /// <summary>The language's own name.</summary>
    public required string Name { get; init; }

    /// <summary>The alphabet its messages are sent in: GSM7 or UCS2.</summary>
    public required string Alphabet { get; init; }

    /// <summary>True once an agronomist who speaks it from childhood has read and signed it.</summary>
    public required bool Reviewed { get; init; }

    /// <summary>Who wrote it and from what.</summary>
    public required string Provenance { get; init; }

    /// <summary>Which plural form each number takes.</summary>
    public required PluralRules Plurals { get; init; }

    /// <summary>Words that farmers do not know, and what to say instead.</summary>
    public required IReadOnlyList<AvoidedWord> Avoid { get; init; }

    /// <summary>Letters that are sent as plainer ones, which the GSM 7-bit alphabet has.</summary>
    public required Replacements Replace { get; init; }

    /// <summary>Numbers in words, from 0; empty where Humanizer knows them.</summary>
    public required IReadOnlyList<string> Numbers { get; init; }

    /// <summary>Ordinals, from the first; empty where Humanizer knows them.</summary>
    public required IReadOnlyList<string> Ordinals { get; init; }

    public required IReadOnlyDictionary<string, Template> Forms { get; init; }

    /// <summary>Numbers of things, such as "6 rounds".</summary>
    public required IReadOnlyDictionary<string, PluralForms> Counts { get; init; }

    public required IReadOnlyDictionary<string, Template> Messages { get; init; }

    /// <summary>Keys of the messages that have a note for translators.</summary>
    public required IReadOnlySet<string> Noted { get; init; }

    /// <summary>Monday to Sunday.</summary>
    public required IReadOnlyList<string> Weekdays { get; init; }

    /// <summary>January to December.</summary>
    public required IReadOnlyList<string> Months { get; init; }

    /// <summary>The hours a farmer may choose, worded.</summary>
    public required IReadOnlyDictionary<int, string> Hours { get; init; }

    public required IReadOnlyDictionary<string, PluralForms> Measures { get; init; }

    public required IReadOnlyDictionary<string, string> Materials { get; init; }

    /// <summary>What may ail a heap, as a sentence each.</summary>
    public required IReadOnlyDictionary<string, string> Causes { get; init; }

    /// <summary>What may be asked of a farmer, as a sentence each.</summary>
    public required IReadOnlyDictionary<string, string> Actions { get; init; }

    public required IReadOnlyDictionary<string, string> Crops { get; init; }

    /// <summary>Every text in it that a farmer can see.</summary>
    public required IReadOnlyList<FarmerText> Texts { get; init; }

    /// <summary>Where each part and each key of a part stands; a part itself has no key.</summary>
    public required IReadOnlyDictionary<(string Part, string? Key), (int Line, int Column)> Places { get; init; }

    /// <summary>A fault at a key of a part, at the part where the key is missing, else at the top.</summary>
    internal DialogFault FaultAt(string part, string? key, string message)
    {
        if (!Places.TryGetValue((part, key), out var place) && !Places.TryGetValue((part, null), out place))
            place = (1, 1);
        return new DialogFault(Path, place.Line, place.Column, message);
    }
}
