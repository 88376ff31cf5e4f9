using HeapText.Agronomy.Heap;

namespace HeapText.Dialog.Replies;

/// <summary>What a text says, in the canonical keys.</summary>
public sealed record Reading
{
    /// <summary>Most materials that a word is asked about.</summary>
    public const int MostChoices = 4;

    /// <summary>The main intent.</summary>
    public required Intent Intent { get; init; }

    /// <summary>Other intents in the same text, in order of appearance.</summary>
    public IReadOnlyList<Intent> Also { get; init; } = [];

    /// <summary>Materials on hand, in order of appearance.</summary>
    public IReadOnlyList<ReadMaterial> Materials { get; init; } = [];

    /// <summary>Things on hand that are no one material, without a key, in order of appearance: with choices a word
    /// for several materials, without choices a word that nobody knows.</summary>
    public IReadOnlyList<ReadMaterial> Unsettled { get; init; } = [];

    /// <summary>True when it names a material that may go in, or a word for several.</summary>
    public bool NamesMaterials => Materials.Count > 0 || Unsettled.Any(thing => thing.Choices.Count > 0);

    /// <summary>Keys of materials that never go into a heap, in order of appearance.</summary>
    public IReadOnlyList<string> Refused { get; init; } = [];

    /// <summary>Heat, smell, moisture and pests, as far as reported.</summary>
    public ReadCheck Check { get; init; } = new();

    /// <summary>The language asked for, by its two-letter code, with <see cref="Intent.Language"/>; else
    /// null.</summary>
    public string? Language { get; init; }

    /// <summary>True when part of the text cannot be meant as read, such as a negative amount.</summary>
    public bool Unclear { get; init; }

    /// <summary>The single number of a text that holds nothing else, such as "2" or "four"; else null.</summary>
    public decimal? BareNumber { get; init; }

    /// <summary>The numbers of a text in order of appearance, whatever they count, such as 20 and 30 in "20 by 30
    /// steps".</summary>
    public IReadOnlyList<decimal> Numbers { get; init; } = [];

    /// <summary>The measure of a text that holds only a measure and perhaps a number, such as "3 sacks"; else
    /// null.</summary>
    public string? BareMeasure { get; init; }

    /// <summary>The number of the heap that is spoken of, as in "heap 2 is hot"; else null.</summary>
    public int? Heap { get; init; }

    /// <summary>What the text reports of further heaps, as in "heap 1 is hot, heap 2 is cold".</summary>
    public IReadOnlyList<Reading> OfOtherHeaps { get; init; } = [];

    /// <summary>How many days ago the reported act was: 1 for "yesterday"; 0 when not said.</summary>
    public int DaysAgo { get; init; }

    /// <summary>The group code of a text that asks to join one, such as "join 41"; else null.</summary>
    public int? GroupCode { get; init; }

    /// <summary>True when the materials come on top of those named before, as in "2 more sacks of dry grass".</summary>
    public bool InAddition { get; init; }

    /// <summary>True when the text says that something is an emergency: a burn, smoke, fire, a sick person,
    /// poison.</summary>
    public bool Urgent { get; init; }
}

/// <summary>One material in a text.</summary>
/// <param name="Material">Canonical key.</param>
/// <param name="Amount">In the measure; null when not said.</param>
/// <param name="Measure">Canonical key; null when not said.</param>
public sealed record ReadMaterial(string Material, decimal? Amount, string? Measure)
{
    /// <summary>Keys of the materials that the word may stand for, when it is a word for several; the material is
    /// then only the usual one of them.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>How it was written, in plain letters, when it has choices or no key; else empty.</summary>
    public string Word { get; init; } = "";
}

/// <summary>What was felt, smelt, squeezed and seen. Null where not reported.</summary>
public sealed record ReadCheck
{
    /// <summary>How hot the rod or hand felt.</summary>
    public Heat? Heat { get; init; }

    /// <summary>How it smells.</summary>
    public Smell? Smell { get; init; }

    /// <summary>How a squeezed handful behaves.</summary>
    public Moisture? Moisture { get; init; }

    /// <summary>Animals seen.</summary>
    public Pests? Pests { get; init; }

    /// <summary>True when nothing was reported.</summary>
    public bool IsEmpty => Heat is null && Smell is null && Moisture is null && Pests is null;
}

/// <summary>What a text wants.</summary>
public enum Intent
{
    Unknown, Stock, Check, Built, Turned, Next, Amounts, Ready, Use, Help, Stop, Start, Language, Delay, Person, Yes,
    No, Erase, NewHeap,
}
