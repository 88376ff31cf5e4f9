namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What a message that came in makes.</summary>
/// <typeparam name="T">What the caller needs in order to answer the message.</typeparam>
internal abstract record Collected<T>
{
    private Collected() { }

    /// <summary>A text to keep; settle it afterwards, whatever came of that.</summary>
    internal sealed record Given(GivenText<T> Text) : Collected<T>;

    /// <summary>A part of a text: it is not answered yet.</summary>
    internal sealed record Held : Collected<T>;

    /// <summary>A part that came before, of a text that is durable: it is answered with
    /// <see cref="CommandStatus.Ok"/>, and has no other effect.</summary>
    internal sealed record Known : Collected<T>;

    /// <summary>A part for which there is no room: it is answered with
    /// <see cref="CommandStatus.ReceiverTemporaryError"/>, so that the peer sends it again.</summary>
    internal sealed record NoRoom : Collected<T>;
}

/// <summary>A text to keep.</summary>
/// <param name="From">The sender.</param>
/// <param name="To">The receiver.</param>
/// <param name="Text">The words, with <c>…</c> where a part is missing. Never logged.</param>
/// <param name="IsComplete">False when parts are missing: it must not be taken for what the farmer meant, but shown to
/// the office.</param>
/// <param name="Part">The part numbers of the long text, the lowest of those that came; null for a text that came in
/// one message. Phones use a reference again soon, so that an id made of it needs the words as well.</param>
internal sealed record GivenText<T>(Address From, Address To, string Text, bool IsComplete, PartOf? Part)
{
    /// <summary>The message's token, when it came in one.</summary>
    internal IReadOnlyList<T> Single { get; init; } = [];

    internal LongText<T>? Long { get; init; }

    internal IReadOnlyList<byte> Numbers { get; init; } = [];

    /// <summary>Its shape alone: numbers and words stay out of logs.</summary>
    public override string ToString() => $"{Part} {(IsComplete ? "complete" : "incomplete")}";
}

/// <summary>What time made of the parts that are kept.</summary>
/// <param name="SendAgain">Messages to answer with <see cref="CommandStatus.ReceiverTemporaryError"/>.</param>
/// <param name="Texts">Texts to keep and settle.</param>
internal sealed record Swept<T>(IReadOnlyList<T> SendAgain, IReadOnlyList<GivenText<T>> Texts);
