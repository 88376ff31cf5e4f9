namespace HeapText.Dialog.Replies;

/// <summary>What a part does in a list of materials.</summary>
internal enum PartKind
{
    Amount, Fraction, Some, Measure, Thing, And, Or, Range, Not, Absent, Lacking, Have, Each, One, Between, Correction,
    Said, Ditto, Minus, Days, Ago, Counted, Asking, Water, WeakBreak, StrongBreak, Unknown, Other,
}

/// <summary>A tag in its role; words that play no role are left out.</summary>
/// <param name="Kind">The role.</param>
/// <param name="Key">Of a measure or material; empty for a thing that nobody knows.</param>
/// <param name="Value">Of an amount or fraction; of a measure that is counted in another, how much of it; else
/// 0.</param>
internal sealed record Part(PartKind Kind, string Key = "", decimal Value = 0)
{
    /// <summary>True for an amount written in letters: those build up, as in "twenty five".</summary>
    public bool IsWord { get; init; }

    /// <summary>True for a fraction that is joined to what is before it without a word for "and".</summary>
    public bool IsJoined { get; init; }

    public bool IsRefused { get; init; }

    /// <summary>True for a measure that is one where nothing else is said: "sack of ash", not "sacks of ash".</summary>
    public bool IsSingle { get; init; }

    /// <summary>Of a thing or an unknown word: how it was written, in plain letters.</summary>
    public string Word { get; init; } = "";

    /// <summary>Of a thing: keys of the materials among which the farmer must choose; empty when it is one.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>True for a word that is only near to one that is no material.</summary>
    public bool IsNearPlain { get; init; }

    /// <summary>True for an unknown word that is an item of a list all by itself.</summary>
    public bool IsAlone { get; init; }

    /// <summary>True for an amount with a word for "of" after it, as in "and 2 of ash": the measure is the one
    /// before.</summary>
    public bool IsOf { get; init; }

    /// <summary>True for an amount that cannot be meant.</summary>
    public bool IsBad { get; init; }

    /// <summary>Of a thing: true where its first word is understood, as the manure in "and of goats".</summary>
    public bool IsElided { get; init; }

    /// <summary>True for a number straight after a colon.</summary>
    public bool IsAfterColon { get; init; }

    public bool IsBreak => Kind is PartKind.WeakBreak or PartKind.StrongBreak;

    public bool IsQuantity => Kind is PartKind.Amount or PartKind.Some or PartKind.Measure;
}
