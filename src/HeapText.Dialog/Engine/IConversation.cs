using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>The pure half: decides, never acts.</summary>
public interface IConversation
{
    /// <summary>A text from this phone has come.</summary>
    /// <param name="farmer">The record; null for a number never heard from.</param>
    /// <param name="subject">The random id to use for a new record.</param>
    /// <param name="line">Name of the line it came in on; answers go out on the same.</param>
    /// <param name="text">What was written.</param>
    /// <param name="now">The time of the turn.</param>
    Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now);

    /// <summary>This phone rang without a word: tells the farmer what comes next, or the open question again.</summary>
    /// <param name="farmer">The record; null for a number never heard from.</param>
    /// <param name="subject">The random id to use for a new record.</param>
    /// <param name="line">Name of the line that was rung; the answer goes out on the same.</param>
    /// <param name="now">The time of the turn.</param>
    Reaction Ring(Farmer? farmer, string subject, string line, Instant now);

    /// <summary>A step on a dialled screen has come.</summary>
    /// <param name="farmer">The record; null for a number never heard from.</param>
    /// <param name="subject">The random id to use for a new record.</param>
    /// <param name="step">What was entered.</param>
    /// <param name="now">The time of the turn.</param>
    ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now);

    /// <summary>A due instant has come.</summary>
    Reaction Wake(Farmer farmer, Instant now);

    /// <summary>When to wake for this farmer, as the record stands; null when nothing is to come.</summary>
    Instant? NextDue(Farmer farmer, Instant now);
}

/// <summary>What a turn decided.</summary>
/// <param name="Farmer">The record after the turn.</param>
/// <param name="Says">Messages to send, in order.</param>
/// <param name="NextDue">When the farmer is due next; null when nothing is to come.</param>
public sealed record Reaction(Farmer Farmer, IReadOnlyList<Outbound> Says, Instant? NextDue);
