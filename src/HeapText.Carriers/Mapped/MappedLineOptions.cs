namespace HeapText.Carriers.Mapped;

/// <summary>Settings of one mapped line, already checked.</summary>
public sealed record MappedLineOptions : LineOptions
{
    /// <summary>How the gateway shows who it is.</summary>
    public required LineAuth Auth { get; init; }

    /// <summary>Texts coming in; null when none do.</summary>
    public SmsMapping? Sms { get; init; }

    /// <summary>Steps of dialled sessions; null when there are none.</summary>
    public UssdMapping? Ussd { get; init; }

    /// <summary>Receipts; null when none come.</summary>
    public ReceiptMapping? Receipts { get; init; }

    /// <summary>Missed calls; null when none come.</summary>
    public CallMapping? Calls { get; init; }

    /// <summary>How messages are sent.</summary>
    public required SendMapping Send { get; init; }
}
