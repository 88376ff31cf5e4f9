using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>How sending one part of a text ended; of several parts the last in this order speaks for all.</summary>
internal enum PartEnd
{
    /// <summary>The centre took it.</summary>
    Taken,

    /// <summary>It was never sent.</summary>
    Unsent,

    /// <summary>Too fast, or the centre's queue is full.</summary>
    Throttled,

    /// <summary>Refused for a reason that may pass, or that is not known here.</summary>
    MayPass,

    /// <summary>Refused because of what every message of the line has.</summary>
    LineRefused,

    /// <summary>Sent, and never answered.</summary>
    Unknown,

    /// <summary>Refused for good.</summary>
    Refused,
}

/// <summary>What a centre's answer to submit_sm means for the message.</summary>
internal static class PartEnds
{
    /// <summary>The meaning; of null, which is no answer, that nothing is known.</summary>
    /// <remarks>A number that a centre made up is tried again: the sender gives up on a message that fails while others
    /// are taken.</remarks>
    public static PartEnd Of(Pdu? answer) => answer?.Status switch
    {
        null => PartEnd.Unknown,
        CommandStatus.Ok => answer is Pdu.SubmitSmResp ? PartEnd.Taken : PartEnd.MayPass,
        CommandStatus.Throttled or CommandStatus.QueueFull => PartEnd.Throttled,
        CommandStatus.InvalidDestination or CommandStatus.InvalidDestinationTon
            or CommandStatus.InvalidDestinationNpi or CommandStatus.InvalidMessageLength
            or CommandStatus.InvalidParameterLength or CommandStatus.ReceiverPermanentError
            or CommandStatus.ReceiverRejected or CommandStatus.DeliveryFailed => PartEnd.Refused,
        CommandStatus.SystemError or CommandStatus.ReceiverTemporaryError
            or CommandStatus.InvalidBindStatus or CommandStatus.InvalidCommandId
            or CommandStatus.InvalidSource or CommandStatus.InvalidSourceTon or CommandStatus.InvalidSourceNpi
            or CommandStatus.InvalidServiceType or CommandStatus.InvalidSystemType or CommandStatus.InvalidEsmClass
            or CommandStatus.InvalidRegisteredDelivery or CommandStatus.InvalidPriority
            or CommandStatus.InvalidExpiry or CommandStatus.InvalidSchedule
            or CommandStatus.InvalidOptionalPart or CommandStatus.InvalidOptionalValue => PartEnd.LineRefused,
        _ => PartEnd.MayPass,
    };
}
