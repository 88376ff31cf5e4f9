using NodaTime;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>How much and how long <see cref="PartsCollector{T}"/> keeps.</summary>
internal sealed record PartsLimits
{
    /// <summary>How long the answer to a part is held back while others are awaited: shorter than the time a peer waits
    /// for an answer, and next to none for a peer that sends no second message before the first is answered. 5 s;
    /// chosen.</summary>
    public Duration Hold { get; init; } = Duration.FromSeconds(5);

    /// <summary>How long parts are kept, from the first, before they are given out without the missing ones; and how
    /// long a text that is done is known again. 10 minutes; chosen.</summary>
    public Duration Keep { get; init; } = Duration.FromMinutes(10);

    /// <summary>Most long texts kept at one time, done ones among them.</summary>
    public int MostTexts { get; init; } = 10_000;

    /// <summary>Most long texts kept of one sender, so that one phone cannot push out the others'.</summary>
    public int MostTextsOfSender { get; init; } = 8;

    /// <summary>Most parts kept in all; each has at most 254 octets.</summary>
    public int MostParts { get; init; } = 40_000;
}
