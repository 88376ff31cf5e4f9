using System.Globalization;
using System.Net;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Carriers.Mapped;

/// <summary>What an answer of the gateway says of a message.</summary>
public enum Verdict
{
    /// <summary>It has the message.</summary>
    Taken,

    /// <summary>It is busy: leave the line alone for a while.</summary>
    Busy,

    /// <summary>It refuses this message for good.</summary>
    Refused,

    /// <summary>It failed: try again.</summary>
    Retry,
}

/// <summary>What the gateway's answers mean.</summary>
public sealed record AnswerRules
{
    /// <summary>What statuses mean, beside the usual: 2xx taken, 429 and 503 busy, other 4xx refused, the rest tried
    /// again.</summary>
    public IReadOnlyList<(int First, int Last, Verdict Verdict)> Statuses { get; init; } = [];

    /// <summary>Where the gateway's own word for the outcome stands; null when the status alone tells.</summary>
    public Field? Result { get; init; }

    /// <summary>What its words mean, without regard to capitals; one that ends in a star stands for all that begin so.
    /// Where some word means taken, nothing else does.</summary>
    public IReadOnlyList<(string Word, Verdict Verdict)> Results { get; init; } = [];

    /// <summary>Where the gateway's reference of the message stands; null when receipts name our own id.</summary>
    public Field? Reference { get; init; }

    /// <summary>True when an answer of this status has to be read beyond its status.</summary>
    internal bool Reads(HttpStatusCode status) =>
        Result is not null || (Reference is not null && OfStatus((int)status) == Verdict.Taken);

    /// <summary>What the answer means.</summary>
    /// <param name="status">Its status.</param>
    /// <param name="source">Its headers and body; null when they could not be read.</param>
    /// <param name="after">How long it asked to be left alone; null when it did not say.</param>
    internal SendOutcome Judge(HttpStatusCode status, FieldSource? source, Duration? after)
    {
        var verdict = OfStatus((int)status);
        if (Result is not null) verdict = OfResult(source, verdict);
        return verdict switch
        {
            Verdict.Taken => new SendOutcome.Taken(References(source)),
            Verdict.Busy => new SendOutcome.Busy(after),
            Verdict.Refused => new SendOutcome.Refused(
                string.Create(CultureInfo.InvariantCulture, $"The gateway refused it with {(int)status}.")),
            // Behind these stands a proxy that found no gateway.
            _ when status is HttpStatusCode.BadGateway or HttpStatusCode.GatewayTimeout =>
                new SendOutcome.TryAgain(after, LineBusy: true),
            _ => new SendOutcome.TryAgain(after),
        };
    }

    private Verdict OfStatus(int status)
    {
        foreach (var (first, last, verdict) in Statuses)
            if (status >= first && status <= last) return verdict;
        return status switch
        {
            >= 200 and < 300 => Verdict.Taken,
            (int)HttpStatusCode.TooManyRequests or (int)HttpStatusCode.ServiceUnavailable => Verdict.Busy,
            >= 400 and < 500 => Verdict.Refused,
            _ => Verdict.Retry,
        };
    }

    private Verdict OfResult(FieldSource? source, Verdict byStatus)
    {
        if (source?.Read(Result!) is FieldValue.Found { Values: [var word] })
        {
            foreach (var (known, verdict) in Results)
                if (IsMeant(word.Trim(), known)) return verdict;
        }

        return byStatus == Verdict.Taken && Results.Any(one => one.Verdict == Verdict.Taken)
            ? Verdict.Retry
            : byStatus;
    }

    private static bool IsMeant(string word, string known) => known.EndsWith('*')
        ? word.StartsWith(known[..^1], StringComparison.OrdinalIgnoreCase)
        : word.Equals(known, StringComparison.OrdinalIgnoreCase);

    private IReadOnlyList<string>? References(FieldSource? source) =>
        Reference is not null && source?.Read(Reference) is FieldValue.Found found ? found.Values : null;
}
