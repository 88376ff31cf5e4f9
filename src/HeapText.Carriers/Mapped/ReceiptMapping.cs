using System.Globalization;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Carriers.Mapped;

/// <summary>Receipts coming in.</summary>
public sealed record ReceiptMapping : HookMapping
{
    private const int LongestState = 100;

    /// <summary>What the answer may repeat.</summary>
    public static readonly IReadOnlyList<string> Names = ["message"];

    /// <summary>What the gateway calls the message.</summary>
    public required Field Message { get; init; }

    /// <summary>The gateway's word for how it ended.</summary>
    public required Field State { get; init; }

    /// <summary>What the gateway's words mean, without regard to capitals; any other word says that the message is
    /// still on its way.</summary>
    public required IReadOnlyDictionary<string, DeliveryState> States { get; init; }

    /// <summary>When it ended; null when the gateway does not say.</summary>
    public Field? At { get; init; }

    /// <summary>How the gateway writes times.</summary>
    public TimeForm AtForm { get; init; } = TimeForm.Rfc3339;

    /// <inheritdoc/>
    public override IEnumerable<Field> Fields => At is null ? [Message, State] : [Message, State, At];

    /// <summary>Reads the receipts of a request.</summary>
    /// <param name="request">The request.</param>
    /// <param name="line">The line it came in on.</param>
    /// <param name="now">When it came in: the time of a receipt that tells none that can be read.</param>
    public HookReading<StateReport> Read(HookRequest request, string line, Instant now) =>
        ReadAll(request, fields => ReadOne(fields, line, now));

    /// <summary>The answer: of one receipt, or of all a request brought.</summary>
    public HookAnswer Write(IReadOnlyList<StateReport> reports)
    {
        ArgumentNullException.ThrowIfNull(reports);
        var values = new Dictionary<string, string>
        {
            ["count"] = reports.Count.ToString(CultureInfo.InvariantCulture),
        };
        if (reports is [var report]) values["message"] = report.Message;
        return Answer.Fill(values);
    }

    private StateReport? ReadOne(FieldReader fields, string line, Instant now)
    {
        var message = fields.Id(Message, Answer.RepeatsInHeader("message"));
        var state = fields.Text(State, 1, LongestState);
        if (message is null || state is null) return null;
        var at = fields.Optional(At) is { } time ? AtForm.Read(time) ?? now : now;
        return new StateReport(message, States.TryGetValue(state.Trim(), out var meant)
            ? new Receipt(line, message, meant, at)
            : null);
    }
}

/// <summary>What a gateway says of a message.</summary>
/// <param name="Message">What it calls the message.</param>
/// <param name="Receipt">How the message ended; null when it is still on its way.</param>
public sealed record StateReport(string Message, Receipt? Receipt);
