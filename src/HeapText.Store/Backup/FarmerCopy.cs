using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;

namespace HeapText.Store.Backup;

/// <summary>All that belongs to a farmer, as it was at one moment. Moments in milliseconds since 1970-01-01T00:00Z
/// unless said otherwise.</summary>
internal sealed record FarmerCopy
{
    /// <summary>Longest that a claim or lease may have to run.</summary>
    private const long LongestLease = 60_000;

    public required FarmerKey Key { get; init; }

    public required long Version { get; init; }

    /// <summary>Sealed.</summary>
    public required byte[] Number { get; init; }

    /// <summary>Packed.</summary>
    public required byte[] Record { get; init; }

    /// <summary>Next due moment, or the end of the claim on it.</summary>
    public long? Due { get; init; }

    public int? Group { get; init; }

    public long? ConcernSince { get; init; }

    public IReadOnlyList<SeenCopy> Seen { get; init; } = [];

    public IReadOnlyList<AnswerCopy> Answers { get; init; } = [];

    /// <summary>In the order they go out.</summary>
    public IReadOnlyList<OutboxCopy> Outbox { get; init; } = [];

    public IReadOnlyList<SentCopy> Sent { get; init; } = [];

    /// <summary>As it is put back: nothing claimed, and further messages numbered from a number that no message made
    /// after the backup has.</summary>
    /// <param name="takenAt">When the backup was taken: a claim ends soon after.</param>
    /// <param name="number">The least number of messages made to go on from; it must rise with each restore by more
    /// than a farmer was sent since the one before. Seconds since 1970 do.</param>
    public FarmerCopy PutBack(long takenAt, long number) => this with
    {
        Due = Due > takenAt && Due <= takenAt + LongestLease ? takenAt : Due,
        Record = Renumbered(number),
    };

    // A record that cannot be read is put back as it is: it holds up nobody but its own farmer.
    private byte[] Renumbered(long number)
    {
        try
        {
            var farmer = RecordFormat.Unpack<Farmer>(Record);
            return RecordFormat.Pack(farmer with { MessagesMade = Math.Max(farmer.MessagesMade, number) });
        }
        catch (InvalidDataException)
        {
            return Record;
        }
    }
}

/// <summary>An inbound message that had its effect: its mark, and when.</summary>
internal sealed record SeenCopy(byte[] Mark, long At);

/// <summary>What a step on a screen was answered with: the mark of the step, when, and the packed screen.</summary>
internal sealed record AnswerCopy(byte[] Mark, long At, byte[] Screen);

/// <summary>A message to send: what it is ordered by, how often it was taken, and the packed message.</summary>
internal sealed record OutboxCopy(
    string Id, string Line, Priority Priority, long NotBefore, int Tries, byte[] Message);

/// <summary>A message that a gateway took: when [s since 1970-01-01T00:00Z], and the packed entry.</summary>
internal sealed record SentCopy(long At, byte[] Entry);

/// <summary>What receipts find a message by.</summary>
/// <param name="Mark">Stands for the gateway's reference.</param>
/// <param name="Key">The farmer.</param>
/// <param name="Tail">The message's id without the subject.</param>
/// <param name="Part">From 0.</param>
/// <param name="At">When it was noted; where only the day is known, its end.</param>
internal sealed record ReferenceCopy(byte[] Mark, FarmerKey Key, string Tail, int Part, long At);

/// <summary>Segments sent on a day, as 2026-03-02, over a line; over all lines where it is empty.</summary>
internal sealed record SpendingCopy(string Day, string Line, long Segments);

/// <summary>A receipt that came before its send was settled.</summary>
internal sealed record EarlyReceiptCopy(byte[] Mark, DeliveryState State, long StateAt, long At);
