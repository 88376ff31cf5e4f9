using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>A message that a gateway took, as the office sees it: without its text.</summary>
/// <param name="Id">The message's id.</param>
/// <param name="Line">Name of the line that sent it.</param>
/// <param name="Priority">Its class.</param>
/// <param name="Segments">What its text takes. [segments]</param>
/// <param name="At">When the gateway took it, to the second.</param>
/// <param name="Parts">In how many parts the gateway reports on it, 1 or more.</param>
/// <param name="PartsDelivered">How many of them the phone is known to have.</param>
/// <param name="State">Delivered once all parts are; else how the first part that failed ended; null while nothing is
/// known.</param>
/// <param name="StateAt">When that was, by the gateway, to the second.</param>
public sealed record SentMessage(
    string Id, string Line, Priority Priority, int Segments, Instant At, int Parts, int PartsDelivered,
    DeliveryState? State, Instant? StateAt)
{
    /// <summary>How many a farmer's log holds.</summary>
    public const int KeptOfFarmer = 8;

    /// <summary>How long a farmer's log holds a message.</summary>
    public static readonly Duration Kept = Duration.FromDays(14);

    /// <summary>How long a message is found by a gateway's reference, at least; at most a day longer.</summary>
    public static readonly Duration ReferencesKept = Duration.FromDays(4);

    /// <summary>How long a receipt waits for the send it is of to be settled.</summary>
    public static readonly Duration EarlyKept = Duration.FromHours(1);
}

/// <summary>A message that will never be sent, kept for the office.</summary>
/// <param name="Key">The farmer.</param>
/// <param name="To">The farmer's number, unsealed; to be shown masked.</param>
/// <param name="At">When it was given up.</param>
/// <param name="Reason">Why.</param>
/// <param name="Message">The message.</param>
public sealed record SetAsideMessage(FarmerKey Key, Msisdn To, Instant At, string Reason, Outbound Message);
