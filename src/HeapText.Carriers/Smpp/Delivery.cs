using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>A deliver_sm that waits for its answer.</summary>
/// <param name="session">The connection it came in on.</param>
/// <param name="pdu">What came in.</param>
internal sealed class Delivery(SmppSession session, Pdu.DeliverSm pdu)
{
    private readonly Lock _lock = new();
    private CommandStatus? _status;
    private long _number;

    public MessageBody Body => pdu.Body;

    /// <summary>The connection it came in on.</summary>
    public SmppSession Session => session;

    /// <summary>Monotonic timestamp of its coming in.</summary>
    public long ReceivedAt { get; } = session.Time.GetTimestamp();

    /// <summary>Answers it, once; a second answer is left out. Nothing happens when the connection is gone.</summary>
    public async ValueTask Answer(CommandStatus status)
    {
        lock (_lock)
        {
            if (_status is not null) return;
            _status = status;
        }

        if (!await session.Write(new Pdu.DeliverSmResp(pdu.Sequence, status))) return;
        var number = session.Life.Wrote();
        lock (_lock) _number = number;
    }

    /// <summary>Whether an equal deliver_sm is this one again.</summary>
    /// <param name="other">The equal one; null for this one itself, handed in anew.</param>
    /// <param name="patience">How long a peer waits at least for its answer before it sends again over the same
    /// connection.</param>
    public Standing Stand(Delivery? other, TimeSpan patience)
    {
        CommandStatus? status;
        long number;
        lock (_lock) (status, number) = (_status, _number);
        if (status is not null and not CommandStatus.Ok) return Standing.ToComeAgain;
        if (status is CommandStatus.Ok && number > 0 && session.Life.IsProven(number)) return Standing.Settled;
        if (other is not null && other.Session != session)
            return session.Life.IsOver ? Standing.ToComeAgain : Standing.Another;
        if (other is null || status is CommandStatus.Ok) return Standing.Another;
        return session.Time.GetElapsedTime(ReceivedAt, other.ReceivedAt) >= patience
            ? Standing.ToComeAgain
            : Standing.Another;
    }
}

/// <summary>Where a delivery stands when an equal one comes in.</summary>
internal enum Standing
{
    /// <summary>Under way over a connection that lives: the other is another message, for now.</summary>
    Another,

    /// <summary>Never surely answered, or answered with an error: the other is this one again.</summary>
    ToComeAgain,

    /// <summary>The peer has its answer: all that come are other messages.</summary>
    Settled,
}
