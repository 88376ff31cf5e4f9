using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of a hook for receipts, and names every fault in it.</summary>
internal static class ReceiptBody
{
    private static readonly Dictionary<string, DeliveryState> States =
        Enum.GetValues<DeliveryState>().ToDictionary(state => state.ToString().ToLowerInvariant());

    /// <summary>The receipt; null when there is a fault, which is then told.</summary>
    /// <param name="body">The bytes.</param>
    /// <param name="line">The line it came in on.</param>
    /// <param name="now">When it came in.</param>
    /// <param name="fault">Every fault found.</param>
    public static Receipt? Read(ReadOnlyMemory<byte> body, InboundLine line, Instant now, out string fault) =>
        JsonBody.Read(body, ["message", "state"], fields => Read(fields, line, now), out fault);

    private static Receipt? Read(JsonBody fields, InboundLine line, Instant now)
    {
        var message = fields.Text("message", 1, JsonBody.LongestId);
        var state = fields.OneOf("state", States);
        var at = fields.Time("at") ?? now;
        return message is null || state is null ? null : new Receipt(line.Name, message, state.Value, at);
    }
}
