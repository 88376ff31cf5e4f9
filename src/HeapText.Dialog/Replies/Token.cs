namespace HeapText.Dialog.Replies;

/// <summary>What a token is.</summary>
internal enum TokenKind
{
    Word,
    Number,

    /// <summary>A comma, slash or bar: parts of one list.</summary>
    WeakBreak,

    /// <summary>A full stop, line end or the like.</summary>
    StrongBreak,

    /// <summary>A dash between two numbers.</summary>
    Range,
}

/// <summary>A word, number or break of a text.</summary>
internal sealed class Token
{
    public required TokenKind Kind { get; init; }

    /// <summary>Normalised letters of a word, digits of a number; else empty.</summary>
    public string Text { get; init; } = "";

    public decimal Value { get; init; }

    /// <summary>True for "1/2", "½" and the like, which may follow a whole number.</summary>
    public bool IsFraction { get; init; }

    /// <summary>True for a whole number written like the mark of a list item: "1." or "1)".</summary>
    public bool IsItemMark { get; init; }

    /// <summary>True when a minus sign is stuck to the number and nothing to the sign.</summary>
    public bool IsNegative { get; init; }

    /// <summary>True when the known words are only near to what was written.</summary>
    public bool IsMended { get; set; }

    /// <summary>Known words this may be: one when spelled right, several when the spelling was mended.</summary>
    public int[] Words { get; set; } = [];
}
