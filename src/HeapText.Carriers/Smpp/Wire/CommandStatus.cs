namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What a peer says of a request. A number that is not named here is kept as it came.</summary>
/// <remarks>Source: SMPP 3.4, section 5.1.3, table 5-2, from memory. The standard's own name stands at each.</remarks>
internal enum CommandStatus : uint
{
    /// <summary>ESME_ROK.</summary>
    Ok = 0x00,

    /// <summary>ESME_RINVMSGLEN.</summary>
    InvalidMessageLength = 0x01,

    /// <summary>ESME_RINVCMDLEN.</summary>
    InvalidCommandLength = 0x02,

    /// <summary>ESME_RINVCMDID.</summary>
    InvalidCommandId = 0x03,

    /// <summary>ESME_RINVBNDSTS: not allowed before, or after, the bind.</summary>
    InvalidBindStatus = 0x04,

    /// <summary>ESME_RALYBND.</summary>
    AlreadyBound = 0x05,

    /// <summary>ESME_RINVPRTFLG.</summary>
    InvalidPriority = 0x06,

    /// <summary>ESME_RINVREGDLVFLG.</summary>
    InvalidRegisteredDelivery = 0x07,

    /// <summary>ESME_RSYSERR.</summary>
    SystemError = 0x08,

    /// <summary>ESME_RINVSRCADR.</summary>
    InvalidSource = 0x0A,

    /// <summary>ESME_RINVDSTADR.</summary>
    InvalidDestination = 0x0B,

    /// <summary>ESME_RINVMSGID.</summary>
    InvalidMessageId = 0x0C,

    /// <summary>ESME_RBINDFAIL.</summary>
    BindFailed = 0x0D,

    /// <summary>ESME_RINVPASWD.</summary>
    InvalidPassword = 0x0E,

    /// <summary>ESME_RINVSYSID.</summary>
    InvalidSystemId = 0x0F,

    /// <summary>ESME_RMSGQFUL.</summary>
    QueueFull = 0x14,

    /// <summary>ESME_RINVSERTYP.</summary>
    InvalidServiceType = 0x15,

    /// <summary>ESME_RINVESMCLASS.</summary>
    InvalidEsmClass = 0x43,

    /// <summary>ESME_RSUBMITFAIL.</summary>
    SubmitFailed = 0x45,

    /// <summary>ESME_RINVSRCTON.</summary>
    InvalidSourceTon = 0x48,

    /// <summary>ESME_RINVSRCNPI.</summary>
    InvalidSourceNpi = 0x49,

    /// <summary>ESME_RINVDSTTON.</summary>
    InvalidDestinationTon = 0x50,

    /// <summary>ESME_RINVDSTNPI.</summary>
    InvalidDestinationNpi = 0x51,

    /// <summary>ESME_RINVSYSTYP.</summary>
    InvalidSystemType = 0x53,

    /// <summary>ESME_RTHROTTLED: more than the peer allows in the time.</summary>
    Throttled = 0x58,

    /// <summary>ESME_RINVSCHED.</summary>
    InvalidSchedule = 0x61,

    /// <summary>ESME_RINVEXPIRY.</summary>
    InvalidExpiry = 0x62,

    /// <summary>ESME_RX_T_APPN: the receiver failed for now; send the same again.</summary>
    ReceiverTemporaryError = 0x64,

    /// <summary>ESME_RX_P_APPN: the receiver failed for good.</summary>
    ReceiverPermanentError = 0x65,

    /// <summary>ESME_RX_R_APPN: the receiver refuses this message.</summary>
    ReceiverRejected = 0x66,

    /// <summary>ESME_RINVOPTPARSTREAM.</summary>
    InvalidOptionalPart = 0xC0,

    /// <summary>ESME_RINVPARLEN.</summary>
    InvalidParameterLength = 0xC2,

    /// <summary>ESME_RINVOPTPARAMVAL.</summary>
    InvalidOptionalValue = 0xC4,

    /// <summary>ESME_RDELIVERYFAILURE.</summary>
    DeliveryFailed = 0xFE,

    /// <summary>ESME_RUNKNOWNERR.</summary>
    UnknownError = 0xFF,
}
