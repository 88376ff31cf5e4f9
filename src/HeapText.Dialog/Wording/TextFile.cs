namespace HeapText.Dialog.Wording;

/// <summary>Everything a farmer can be told in one language: dialogs/&lt;language&gt;/text.yml.</summary>
public sealed class TextFile
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

    public required IReadOnlyDictionary<string, Template> Forms { get; init; }

    public required IReadOnlyDictionary<string, Template> Messages { get; init; }

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
}

/// <summary>A word for one and for several.</summary>
public sealed record PluralForms(string One, string Other);
