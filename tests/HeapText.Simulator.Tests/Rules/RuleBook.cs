using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Simulator.Tests.Running;
using HeapText.Simulator.Tests.Store;
using NodaTime;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>The invariants of the design, held against every step of a simulation. The first one that is broken stays
/// on record.</summary>
internal sealed partial class RuleBook(MemoryHome home, Timeline timeline, Conversation conversation)
{
    private readonly Dictionary<FarmerKey, FarmerModel> _farmers = [];
    private readonly Dictionary<string, MessageModel> _messages = [];
    private bool _clockWasSet;

    /// <summary>Texts and calls that came in, by their ids.</summary>
    public Dictionary<string, Arrival> Arrivals { get; } = [];

    /// <summary>The first broken rule; null while all hold.</summary>
    public string? Broken { get; private set; }

    /// <summary>Messages that came to the gateway, each counted once.</summary>
    public int Messages { get; private set; }

    /// <summary>Reminders that were sent although the farmer had reported since they were made.</summary>
    public int Overtaken { get; private set; }

    private Instant Now => Instant.FromDateTimeOffset(timeline.Wall);

    public void Break(string rule) => Broken ??= rule;

    public void Name(FarmerKey key, string name) => _farmers.TryAdd(key, new FarmerModel(name));

    public IConversation Watching(IConversation inner) => new WatchedConversation(inner, this);

    /// <summary>A turn's effect was taken.</summary>
    public void Committed(Commit commit)
    {
        var farmer = _farmers[commit.Key];
        if (commit.ExpectedVersion != farmer.Version)
            Break($"a turn of {farmer.Name} began at version {commit.ExpectedVersion}, not {farmer.Version}");
        if (commit.Seen is { } seen)
        {
            farmer.Effects[seen] = farmer.Effects.GetValueOrDefault(seen) + 1;
            if (farmer.Effects[seen] > 1) Break($"{seen.Id} of {farmer.Name} had its effect twice");
        }
        CheckReminder(farmer, commit);
        CheckDue(farmer, commit);
        CheckAnswered(farmer, commit);
        if (commit.Farmer.Stopped && farmer.Record?.Stopped != true) farmer.StoppedAt = timeline.Elapsed;
        (farmer.Record, farmer.NextDue) = (commit.Farmer, commit.NextDue);
        farmer.Version++;
        foreach (var message in commit.Send)
        {
            var made = new MessageModel(message, farmer, commit.Farmer);
            if (!_messages.TryAdd(message.Id, made)) Break($"the id of {made.Name} was given twice");
            farmer.Messages.Add(made);
        }
    }

    public void ClockWasSet() => _clockWasSet = true;

    /// <summary>The gateway was told that a text or call is taken.</summary>
    public void Accepted(Arrival arrival)
    {
        arrival.IsAccepted = true;
        var farmer = _farmers[arrival.From];
        if (farmer.Effects.GetValueOrDefault(arrival.Seen) != 1)
            Break($"{arrival.Seen.Id} of {farmer.Name} was accepted without its effect");
    }

    /// <summary>The store against what was committed; asked after every step.</summary>
    public void CheckAll()
    {
        foreach (var kept in home.Farmers)
        {
            var farmer = _farmers[kept.Key];
            if (kept.Version != farmer.Version)
                Break($"{farmer.Name} is at version {kept.Version}; {farmer.Version} was promised");
            if (kept.Due is null != farmer.NextDue is null)
                Break($"{farmer.Name} is {(kept.Due is null ? "off" : "on")} the due list against the last turn");
        }
    }

    /// <summary>All held-up work is done, long after the last fault.</summary>
    public void CheckEnd()
    {
        CheckAll();
        foreach (var arrival in Arrivals.Values)
            if (!arrival.IsAccepted) Break($"{arrival.Seen.Id} of {_farmers[arrival.From].Name} was never accepted");
        var aside = home.SetAside.Select(one => one.Message.Id).ToHashSet();
        foreach (var message in _messages.Values)
            if (!message.HasArrived && !aside.Contains(message.Message.Id)) Break($"{message.Name} was never sent");
        foreach (var one in home.SetAside)
            if (one is { Reason: "expired", Message.Priority: Priority.Reply } && !_clockWasSet)
                Break($"{NameOf(one.Message)}, an answer, was given up as expired");
        foreach (var kept in home.Farmers)
        {
            var farmer = _farmers[kept.Key];
            if (kept.Outbox.Count > 0) Break($"{kept.Outbox.Count} messages to {farmer.Name} still wait");
            if (kept.Due is { } due) CheckDueAtRest(farmer, Instant.FromUnixTimeMilliseconds(due));
        }
    }

    private void CheckDueAtRest(FarmerModel farmer, Instant due)
    {
        if (due < Now - Duration.FromMinutes(1)) Break($"{farmer.Name} was due at {due} and nothing came of it");
        if (conversation.NextDue(farmer.Record!, Now) is not { } wanted) return;
        var latest = Instant.Max(wanted, Now) + Duration.FromMinutes(1);
        if (due > latest) Break($"{farmer.Name} is due only at {due}; {wanted} is right");
    }
}
