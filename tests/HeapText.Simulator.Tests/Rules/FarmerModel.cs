using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>What must be so of one farmer, by what was committed; kept apart from the store.</summary>
internal sealed class FarmerModel(string name)
{
    public string Name => name;

    public Farmer? Record { get; set; }

    public long Version { get; set; }

    public Instant? NextDue { get; set; }

    /// <summary>When the last STOP had its effect. [ticks since the start]</summary>
    public long StoppedAt { get; set; }

    public Dictionary<SeenId, int> Effects { get; } = [];

    /// <summary>In the order in which they were committed.</summary>
    public List<MessageModel> Messages { get; } = [];

    /// <summary>What the farmer was reminded of on which of his days, with how much he had been heard by
    /// then.</summary>
    public Dictionary<(LocalDate Day, string Kind), int> Reminded { get; } = [];

    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[Record!.Zone];
}

/// <summary>One message that was committed.</summary>
/// <param name="Message">As it was committed, and must be sent.</param>
/// <param name="To">The farmer.</param>
/// <param name="Said">The farmer's record as it was when the message was made.</param>
internal sealed record MessageModel(Outbound Message, FarmerModel To, Farmer Said)
{
    /// <summary>True once the gateway has it.</summary>
    public bool HasArrived { get; set; }

    /// <summary>"f1-7": no random id, so that a trace tells the same each time.</summary>
    public string Name => $"{To.Name}{Message.Id[Message.Id.LastIndexOf('-')..]}";
}

/// <summary>A text or call that came in, and may come again.</summary>
internal sealed class Arrival(FarmerKey from, SeenId seen, string text)
{
    public FarmerKey From => from;

    public SeenId Seen => seen;

    public string Text => text;

    /// <summary>True once the gateway was told that it is taken.</summary>
    public bool IsAccepted { get; set; }
}
