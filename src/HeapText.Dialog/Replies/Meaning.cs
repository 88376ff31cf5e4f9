namespace HeapText.Dialog.Replies;

/// <summary>What kind of thing a word stands for.</summary>
internal enum MeaningKind
{
    Plain, Material, Refused, Measure, Number, Fraction, Heat, Smell, Moisture, Pests, Intent, Language, DaysAgo,
    Urgent, Particle,

    /// <summary>A word for several materials, of which one must be chosen.</summary>
    Ambiguous,
}

/// <summary>The little words that tie a text together.</summary>
internal enum Particle
{
    /// <summary>"of", "the": may stand inside any phrase and means nothing.</summary>
    Link,
    And,
    Or,

    /// <summary>"not": takes back the amount, material or answer after it.</summary>
    Not,

    /// <summary>"no", "don't have": the material is not there.</summary>
    Absent,

    /// <summary>The same in a language whose verb ends the clause: what stands before it is not there.</summary>
    Lacking,
    Have,
    Each,

    /// <summary>"a" before a measure: one of it.</summary>
    One,

    /// <summary>"some", "plenty": there is an amount, but which is not said.</summary>
    Some,
    More,
    Between,

    /// <summary>"sorry", "I mean": the amount after it replaces the one before.</summary>
    Correction,
    Minus,
    Days,
    Ago,

    /// <summary>Things farmers count that are no measure: people, metres, plants.</summary>
    Counted,

    /// <summary>What is measured like a material but is listed with none: its amount belongs to no other.</summary>
    Water,

    /// <summary>"can I", "how many": what follows is asked about, not on hand.</summary>
    Asking,

    /// <summary>"is", "will": asks where a clause starts with it, as in "is 3 buckets enough".</summary>
    AskingFirst,
    Now,

    /// <summary>"heap": a number straight after it tells which.</summary>
    Heap,

    /// <summary>"I said": the amount after it gives way to one after that, else says nothing.</summary>
    Said,

    /// <summary>"the same": the amount of the thing before it in the list.</summary>
    Ditto,

    /// <summary>A tin, a cup: counts a material, but how much it holds is not known.</summary>
    Vessel,

    /// <summary>A crop none of whose parts is a known material: its stalks are an unknown thing.</summary>
    OtherCrop,
}

/// <summary>What a word or phrase stands for.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Key">Canonical key, or the particle's or language's name.</param>
/// <param name="Value">Of a number, fraction or count of days; of a measure that is counted in another, how much of it;
/// else 0.</param>
/// <param name="Choices">Keys of the materials that an ambiguous word may stand for; else null.</param>
internal readonly record struct Meaning(
    MeaningKind Kind, string Key, decimal Value = 0, IReadOnlyList<string>? Choices = null)
{
    public bool IsCheck => Kind is >= MeaningKind.Heat and <= MeaningKind.Pests;

    public bool IsThing => Kind is MeaningKind.Material or MeaningKind.Refused or MeaningKind.Ambiguous;

    /// <summary>The place of the key among those of its kind; -1 for a key of no enumeration.</summary>
    public int Place { get; init; } = -1;

    public bool Is(Particle particle) => Kind == MeaningKind.Particle && Place == (int)particle;

    public bool Is(Intent intent) => Kind == MeaningKind.Intent && Place == (int)intent;
}
