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

    /// <summary>Whether an equal deliver_sm that comes in now is this one again.</summary>
    /// <param name="patience">How long a peer waits at least for its answer before it sends again over the same
    /// connection.</param>
    public Standing Stand(TimeSpan patience)
    {
        CommandStatus? status;
        long number;
        lock (_lock) (status, number) = (_status, _number);
        if (status is not null and not CommandStatus.Ok) return Standing.ToComeAgain;
        if (status is CommandStatus.Ok && number > 0 && session.Life.IsProven(number)) return Standing.Settled;
        if (session.Life.IsOver) return Standing.ToComeAgain;
        if (status is CommandStatus.Ok) return Standing.Answered;
        return session.Time.GetElapsedTime(ReceivedAt) >= patience ? Standing.ToComeAgain : Standing.Waiting;
    }
}

/// <summary>Where a delivery stands.</summary>
internal enum Standing
{
    /// <summary>Not answered yet, and too young to be sent again: an equal one is another message.</summary>
    Waiting,

    /// <summary>Answered over a connection that lives: an equal one is another message, unless the connection
    /// ends.</summary>
    Answered,

    /// <summary>Never surely answered, or answered with an error: an equal one is this one again.</summary>
    ToComeAgain,

    /// <summary>The peer has its answer: an equal one is another message.</summary>
    Settled,
}
