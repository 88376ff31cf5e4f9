using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>How the text of receipts writes a message's id, against how submit_sm_resp gave it.</summary>
public enum ReceiptIds
{
    /// <summary>Both alike.</summary>
    AsIs,

    /// <summary>Hexadecimal, while submit_sm_resp has it in decimal.</summary>
    InHex,

    /// <summary>Decimal, while submit_sm_resp has it in hexadecimal.</summary>
    InDecimal,
}

/// <summary>Settings of one SMPP line, already checked.</summary>
public sealed record SmppLineOptions : LineOptions
{
    /// <summary>Name or address of the message centre.</summary>
    public required string Host { get; init; }

    /// <summary>Its port; 1 to 65535. Default 2775, with TLS 3550.</summary>
    public required int Port { get; init; }

    /// <summary>Whether the connection is sealed; default true, except to this machine.</summary>
    public required bool Tls { get; init; }

    /// <summary>The name the centre's certificate must be for; null for <see cref="Host"/>.</summary>
    public string? TlsName { get; init; }

    /// <summary>Who we are; 1 to 15 characters.</summary>
    public required string SystemId { get; init; }

    /// <summary>Up to 8 characters. Never logged.</summary>
    public string Password { get; init; } = "";

    /// <summary>Up to 12 characters; most centres want none.</summary>
    public string SystemType { get; init; } = "";

    /// <summary>Type of number of <see cref="LineOptions.From"/>, 0 to 6; null to see it from what From is.</summary>
    public byte? SourceTon { get; init; }

    /// <summary>Numbering plan of <see cref="LineOptions.From"/>, 0 to 18; null to see it from what From is.</summary>
    public byte? SourceNpi { get; init; }

    /// <summary>service_type of what is sent; up to 5 characters.</summary>
    public string ServiceType { get; init; } = "";

    /// <summary>What a data_coding of 0 stands for.</summary>
    public Alphabet Alphabet { get; init; } = Alphabet.Gsm7;

    /// <summary>How long texts travel.</summary>
    public LongTexts LongTexts { get; init; } = LongTexts.Headers;

    /// <summary>How validity_period is written.</summary>
    public SmppTimeForm Validity { get; init; } = SmppTimeForm.Relative;

    /// <summary>The most requests that may wait for their answer at once; 1 to 1000, default 10.</summary>
    public int Window { get; init; } = 10;

    /// <summary>How often the centre is asked whether it is there; 5 s to 10 min, default 30 s.</summary>
    public TimeSpan EnquireEvery { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How long an enquire_link may go unanswered before the link counts as lost; 1 s to 60 s, default
    /// 10 s.</summary>
    public TimeSpan EnquireTimeout { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How long any other request may go unanswered before its outcome counts as unknown; 1 s to 25 s, default
    /// 10 s.</summary>
    public TimeSpan ResponseTimeout { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How receipts write ids.</summary>
    public ReceiptIds ReceiptIds { get; init; } = ReceiptIds.AsIs;

    /// <summary>Whether receipts are asked for; default true.</summary>
    public bool Receipts { get; init; } = true;

    /// <summary>Wait before the first try to connect again; 0.1 s to 60 s, default 1 s.</summary>
    public TimeSpan ReconnectFirst { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Longest wait before a try to connect again; up to 15 min, default 60 s.</summary>
    public TimeSpan ReconnectLongest { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The settings without the password.</summary>
    public override string ToString() => $"SMPP line {Name} to {Host}:{Port}";
}
