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

    /// <summary>True for a whole number or a letter written like the mark of a list item: "1." or "a)".</summary>
    public bool IsItemMark { get; init; }

    /// <summary>True for a number straight after a colon.</summary>
    public bool IsAfterColon { get; init; }

    /// <summary>True when a minus sign is stuck to the number and nothing to the sign.</summary>
    public bool IsNegative { get; init; }

    /// <summary>Known words this may be: when spelled right, itself and then what it is without its endings; when
    /// mended, all that are equally near.</summary>
    public int[] Words { get; set; } = [];

    /// <summary>True when the spelling was mended, so that each of the words may be the one meant.</summary>
    public bool IsMended { get; set; }
}
