using System.Security.Cryptography;
using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Simulator.Tests.Store;

/// <summary>What is kept, while stores over it come and go.</summary>
internal sealed class MemoryHome
{
    private readonly Dictionary<Msisdn, FarmerKey> _keys = [];
    private readonly Dictionary<FarmerKey, MemoryFarmer> _byKey = [];
    private long _sequence;

    /// <summary>Held through each step: a step is one and whole.</summary>
    public Lock Lock { get; } = new();

    /// <summary>In the order in which they were first heard from.</summary>
    public List<MemoryFarmer> Farmers { get; } = [];

    public SortedDictionary<int, Group> Groups { get; } = [];

    public Dictionary<(string District, string Word), OwnWord> Words { get; } = [];

    public List<AuditEntry> Audit { get; } = [];

    public List<SetAsideMessage> SetAside { get; } = [];

    /// <summary>By line and reference: the message, its part, and when it was sent.</summary>
    public Dictionary<(string Line, string Reference), ReferencedPart> References { get; } = [];

    /// <summary>Receipts that came before the send was settled.</summary>
    public Dictionary<(string Line, string Reference), (Receipt Receipt, Instant At)> Early { get; } = [];

    private readonly Dictionary<string, RateWindow> _windows = [];
    private readonly Dictionary<(LocalDate Day, string Line), long> _spent = [];

    /// <summary>What a line sent of late.</summary>
    public RateWindow WindowOf(string line) =>
        _windows.TryGetValue(line, out var known) ? known : _windows[line] = new RateWindow();

    /// <summary>What went on a day. [segments]</summary>
    public long Spent(LocalDate day, string line) => _spent.GetValueOrDefault((day, line));

    /// <summary>Counts what went on a day, or takes it off again: a day never holds less than nothing.</summary>
    public void Spend(LocalDate day, string line, long segments) =>
        _spent[(day, line)] = Math.Max(0, Spent(day, line) + segments);

    public long NextSequence() => ++_sequence;

    public FarmerKey KeyOf(Msisdn number)
    {
        if (_keys.TryGetValue(number, out var known)) return known;
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(number.Value)).AsSpan(0, 16));
        return _keys[number] = new FarmerKey(hash);
    }

    public MemoryFarmer? Find(FarmerKey key) => _byKey.GetValueOrDefault(key);

    public MemoryFarmer Add(FarmerKey key, Msisdn number)
    {
        var farmer = new MemoryFarmer(key, number);
        Farmers.Add(farmer);
        return _byKey[key] = farmer;
    }

    /// <summary>When the next farmer is due; null when none is. [ms]</summary>
    public long? NextDue()
    {
        long? next = null;
        foreach (var farmer in Farmers)
            if (farmer.Due is { } due && !(next <= due)) next = due;
        return next;
    }

    /// <summary>When the next message may be sent; null when none waits. [ms]</summary>
    public long? NextReady()
    {
        long? next = null;
        foreach (var farmer in Farmers)
            if (farmer.Outbox is [var first, ..] && !(next <= first.Ready)) next = first.Ready;
        return next;
    }
}

/// <summary>What a gateway's reference stands for.</summary>
internal sealed record ReferencedPart(SentParts Sent, int Part, Instant At, MemoryFarmer Of);
