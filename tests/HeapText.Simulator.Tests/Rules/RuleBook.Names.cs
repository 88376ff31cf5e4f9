using System.Globalization;
using HeapText.Dialog.Ports;

namespace HeapText.Simulator.Tests.Rules;

/// <summary>How things are called in a trace: without anything random.</summary>
internal sealed partial class RuleBook
{
    public string NameOf(FarmerKey key) => _farmers.TryGetValue(key, out var farmer) ? farmer.Name : "nobody";

    public string NameOf(Outbound message) => _messages.TryGetValue(message.Id, out var made)
        ? made.Name
        : $"unknown{message.Id[message.Id.LastIndexOf('-')..]}";

    /// <summary>Tells a result.</summary>
    public string Tell(object? what) => what switch
    {
        null => "",
        TurnStart start => string.Create(
            CultureInfo.InvariantCulture, $"v{start.Version}{(start.Seen ? " seen" : "")}"),
        IReadOnlyList<FarmerKey> keys => string.Join(' ', keys.Select(NameOf)),
        IReadOnlyList<Sending> taken => string.Join(
            ' ', taken.Select(one => $"{NameOf(one.Message)} (try {one.Attempt})")),
        Commit commit => $"due {commit.NextDue?.ToString() ?? "never"}"
            + $"{(commit.Farmer.Stopped ? ", stopped" : "")}; says {string.Join(' ', commit.Send.Select(NameOf))}",
        Settlement.Sent => "sent",
        Settlement.Retry retry => $"retry at {retry.At}",
        Settlement.PutBack back => $"put back until {back.At}",
        Settlement.SetAside aside => $"aside: {aside.Reason}",
        _ => $"{what}",
    };
}
