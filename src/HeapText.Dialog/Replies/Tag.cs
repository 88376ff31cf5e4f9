namespace HeapText.Dialog.Replies;

/// <summary>A stretch of a text and what it may stand for.</summary>
/// <param name="Token">Its first token.</param>
/// <param name="Meanings">In the farmer's language if there, else in the others; empty when unknown.</param>
/// <param name="IsTorn">True when the misspelled word may stand for different things.</param>
internal sealed record Tag(Token Token, IReadOnlyList<Meaning> Meanings, bool IsTorn = false)
{
    /// <summary>Keys of the materials that a torn word may stand for; empty where it may be no material.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>True for an answer that only says what is not so, as "not hot": a plain one after it holds.</summary>
    public bool StartsWithNot { get; init; }

    /// <summary>True for a material whose first word is understood, as the manure in "and of goats".</summary>
    public bool IsElided { get; init; }

    /// <summary>How many words the phrase has.</summary>
    public int Words { get; init; } = 1;

    public bool IsBreak => Token.Kind is TokenKind.WeakBreak or TokenKind.StrongBreak;

    public bool IsUnknown => Token.Kind == TokenKind.Word && Meanings.Count == 0;

    public bool Is(Particle particle) => Meanings.Any(meaning => meaning.Is(particle));

    public Meaning? First(MeaningKind kind)
    {
        foreach (var meaning in Meanings)
            if (meaning.Kind == kind)
                return meaning;
        return null;
    }
}
