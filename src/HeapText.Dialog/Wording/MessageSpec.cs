namespace HeapText.Dialog.Wording;

/// <summary>A message the service can send: its key in text.yml, how long it may be, and what is filled in.</summary>
/// <param name="Key">Key in text.yml.</param>
/// <param name="Segments">Most segments it may take in the GSM 7-bit alphabet, with the longest values filled in;
/// see <see cref="SegmentsIn"/> for others.</param>
/// <param name="OfHeap">True when it starts with the heap's name on a phone with several heaps.</param>
/// <param name="Slots">The placeholders it must hold.</param>
public sealed record MessageSpec(string Key, int Segments, bool OfHeap, IReadOnlyList<Slot> Slots)
{
    private const int MostSegments = 3;

    /// <summary>
    /// Most segments in an alphabet, GSM7 or UCS2: a segment of UCS-2 holds 67 letters and not 153, so a language that
    /// needs it has one segment more, never over three.
    /// </summary>
    public int SegmentsIn(string alphabet) => alphabet == "UCS2" ? Math.Min(Segments + 1, MostSegments) : Segments;
}

/// <summary>A named, typed placeholder.</summary>
public sealed record Slot(string Name, SlotKind Kind);

/// <summary>What a placeholder is filled with; decides how it is worded and its longest value.</summary>
public enum SlotKind
{
    /// <summary>A whole number up to 9999 with nothing to count, such as a group code.</summary>
    Number,

    /// <summary>A number of things with the thing, such as "6 rounds"; the placeholder is named as the thing.</summary>
    Count,

    /// <summary>Which one in a row, such as "third".</summary>
    Ordinal,

    /// <summary>An amount of water in 20-litre buckets, in halves.</summary>
    Buckets,

    /// <summary>A length in metres with one decimal.</summary>
    Metres,

    /// <summary>A day of the week, a day and a month.</summary>
    Date,

    /// <summary>A full hour of the day.</summary>
    Hour,

    /// <summary>A name of a village or trainer, up to <see cref="Phrasebook.LongestName"/> letters.</summary>
    Name,

    /// <summary>One material.</summary>
    Material,

    /// <summary>Materials, listed; shortened to what fits.</summary>
    Materials,

    /// <summary>One or more amounts of a material, in order; shared out over messages by what fits.</summary>
    Portions,

    /// <summary>A measure in the plural.</summary>
    Measure,

    /// <summary>An amount in a measure, of something that is named beside it.</summary>
    Measured,

    /// <summary>What ails a heap.</summary>
    Cause,

    /// <summary>One or two things to do.</summary>
    Actions,

    /// <summary>A crop.</summary>
    Crop,

    /// <summary>Numbered crops.</summary>
    CropChoices,

    /// <summary>A sum of money, rounded to two figures.</summary>
    Money,

    /// <summary>Numbered materials of a menu, "1 … 2 …".</summary>
    MaterialChoices,

    /// <summary>Numbered materials that a word may mean, up to <see cref="Replies.Reading.MostChoices"/>.</summary>
    MeantChoices,

    /// <summary>Words as the farmer wrote them; shortened to what fits.</summary>
    Words,

    /// <summary>Numbered measures.</summary>
    MeasureChoices,

    /// <summary>Numbered hours of the day.</summary>
    HourChoices,

    /// <summary>Numbered heaps of a phone.</summary>
    HeapChoices,

    /// <summary>How each other language offers itself.</summary>
    LanguageHints,

    /// <summary>A key of the phone, one sign.</summary>
    Key,
}
