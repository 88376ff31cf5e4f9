using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Simulator.Tests.Store;

/// <summary>All that a store in memory keeps of one farmer.</summary>
internal sealed class MemoryFarmer(FarmerKey key, Msisdn number)
{
    public FarmerKey Key => key;

    public Msisdn Number => number;

    public Farmer? Record { get; set; }

    public long Version { get; set; }

    /// <summary>When the farmer is due, or the claim of who took this up ends; null when nothing is. [ms]</summary>
    public long? Due { get; set; }

    public Dictionary<SeenId, (Instant At, Screen? Answer)> Seen { get; } = [];

    /// <summary>Messages that wait, in the order in which they go.</summary>
    public List<Waiting> Outbox { get; } = [];

    /// <summary>Messages that were sent, oldest first.</summary>
    public List<SentParts> Sent { get; } = [];

    /// <summary>Puts a message where it belongs: behind what was tried and what goes no later.</summary>
    public void Queue(Waiting waiting)
    {
        var place = Outbox.Count;
        while (place > 0 && Outbox[place - 1].Tries == 0 && Outbox[place - 1].NotBefore > waiting.NotBefore) place--;
        Outbox.Insert(place, waiting);
    }
}

/// <summary>A message in the outbox.</summary>
internal sealed class Waiting(Outbound message, long sequence)
{
    public Outbound Message { get; set; } = message;

    public long Sequence => sequence;

    public long NotBefore { get; } = Millis.Until(message.NotBefore);

    /// <summary>How often it was taken.</summary>
    public int Tries { get; set; }

    /// <summary>When it may be taken, if it is the farmer's first. [ms]</summary>
    public long Ready { get; set; } = Millis.Until(message.NotBefore);
}
