using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>How a message that a gateway took ended.</summary>
public enum DeliveryState
{
    /// <summary>The phone has it.</summary>
    Delivered,

    /// <summary>It could not be delivered.</summary>
    Failed,

    /// <summary>Its time ran out before the phone could be reached.</summary>
    Expired,

    /// <summary>The network refused it.</summary>
    Rejected,
}

/// <summary>A gateway's word on how a message ended.</summary>
/// <param name="Line">Name of the line it came in on.</param>
/// <param name="Reference">What the gateway calls the message: one of <see cref="SendOutcome.Taken.References"/>, or
/// our own id where it gave none.</param>
/// <param name="State">How the message ended.</param>
/// <param name="At">When, by the gateway; the moment it came in where the gateway does not say.</param>
public sealed record Receipt(string Line, string Reference, DeliveryState State, Instant At);
