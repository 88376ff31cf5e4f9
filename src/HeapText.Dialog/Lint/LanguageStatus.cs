using System.Globalization;

namespace HeapText.Dialog.Lint;

/// <summary>How far a language is.</summary>
/// <param name="Language">Two-letter code.</param>
/// <param name="Reviewed">True once a native-speaking agronomist has signed its texts.</param>
/// <param name="Messages">How many messages it has.</param>
public sealed record LanguageStatus(string Language, bool Reviewed, int Messages)
{
    /// <summary>How many messages take 1, 2, ... segments, with the longest values filled in.</summary>
    public required IReadOnlyDictionary<int, int> MessagesBySegments { get; init; }

    /// <summary>Sentences in its messages, causes and actions.</summary>
    public required int Sentences { get; init; }

    /// <summary>Words a sentence, on average.</summary>
    public required double WordsASentence { get; init; }

    /// <summary>Messages with a note for translators.</summary>
    public required int Notes { get; init; }

    /// <summary>Phrases that farmers may use, by kind.</summary>
    public required IReadOnlyDictionary<string, int> Phrases { get; init; }

    /// <summary>All of it in one line.</summary>
    public override string ToString()
    {
        var segments = string.Join(", ", MessagesBySegments.OrderBy(pair => pair.Key)
            .Select(pair => $"{pair.Value} of {pair.Key}"));
        var phrases = string.Join(", ", Phrases.Select(pair => $"{pair.Value} {pair.Key}"));
        return string.Create(CultureInfo.InvariantCulture, $"{Language}: {(Reviewed ? "reviewed" : "not reviewed")}; "
            + $"{Messages} messages, at their longest {segments} segments; {Sentences} sentences of "
            + $"{WordsASentence:0.0} words; {Notes} notes; phrases to understand: {phrases}");
    }
}
