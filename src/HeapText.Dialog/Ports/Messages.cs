using System.Runtime.Serialization;
using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>A message that came in on a line, after its fields were mapped and its sender normalised.</summary>
/// <param name="Id">The gateway's id; the same id from the same sender on the same line is the same message.</param>
/// <param name="Line">Name of the line it came in on.</param>
/// <param name="From">The sender.</param>
/// <param name="Text">What was written. Never logged.</param>
public sealed record Inbound(string Id, string Line, Msisdn From, string Text);

/// <summary>A call that was not taken, and cost the farmer nothing.</summary>
/// <param name="Id">The gateway's id; the same id from the same caller on the same line is the same call.</param>
/// <param name="Line">Name of the line it came in on.</param>
/// <param name="From">The caller.</param>
public sealed record MissedCall(string Id, string Line, Msisdn From);

/// <summary>One step of a session on a phone's screen: what the farmer entered on the screen before.</summary>
/// <param name="Session">The gateway's id of the session.</param>
/// <param name="Step">Rises with each entry of the session; the same step again is the same entry.</param>
/// <param name="Line">Name of the line it came in on.</param>
/// <param name="From">The dialling phone.</param>
/// <param name="Input">The newest entry alone; empty in the first step. Never logged.</param>
public sealed record Dialled(string Session, int Step, string Line, Msisdn From, string Input);

/// <summary>What a phone's screen shows.</summary>
/// <param name="Text">At most 160 septets, or 70 UCS-2 units. Never logged.</param>
/// <param name="Open">True when the farmer can enter something; false when the session ends.</param>
[DataContract]
public sealed record Screen(
    [property: DataMember(Order = 0)] string Text, [property: DataMember(Order = 1)] bool Open)
{
    /// <summary>How long a given answer is kept word for word: far longer than a session, which networks end within
    /// minutes.</summary>
    public static readonly Duration Kept = Duration.FromHours(1);
}

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
