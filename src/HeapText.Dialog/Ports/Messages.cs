using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>A message that came in on a line, after its fields were mapped and its sender normalised.</summary>
/// <param name="Id">The gateway's id; the same id from the same sender on the same line is the same message.</param>
/// <param name="Line">Name of the line it came in on.</param>
/// <param name="From">The sender.</param>
/// <param name="Text">What was written. Never logged.</param>
public sealed record Inbound(string Id, string Line, Msisdn From, string Text);

/// <summary>Which messages go first when a line cannot send them all at once.</summary>
public enum Priority
{
    /// <summary>A farmer is waiting for it.</summary>
    Reply,

    /// <summary>A turning reminder or a check question.</summary>
    Reminder,

    /// <summary>A message to a group.</summary>
    Notice,
}

/// <summary>A message to send. Its id is given once and never changes; a repeat send uses the same id.</summary>
/// <param name="Id">Unique for ever: subject id, a dash, the farmer's running number of messages.</param>
/// <param name="Line">Name of the line to send it on.</param>
/// <param name="Text">The words. Never logged.</param>
/// <param name="Priority">Its class.</param>
/// <param name="NotBefore">Earliest moment to send.</param>
/// <param name="ExpiresAt">After this moment it is set aside instead of sent.</param>
public sealed record Outbound(
    string Id, string Line, string Text, Priority Priority, Instant NotBefore, Instant ExpiresAt);
