using HeapText.Dialog.Ports;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of an SMS hook, and names every fault in it.</summary>
internal static class SmsBody
{
    /// <summary>The message; null when there is a fault, which is then told.</summary>
    public static Inbound? Read(ReadOnlyMemory<byte> body, InboundLine line, out string fault) =>
        JsonBody.Read(body, ["id", "from", "to", "text"], fields => Read(fields, line), out fault);

    private static Inbound? Read(JsonBody fields, InboundLine line)
    {
        var id = fields.Text("id", 1, JsonBody.LongestId);
        var from = fields.From(line);
        fields.Text("to", 1, JsonBody.LongestAddress);
        var text = fields.Text("text", 0, HookBody.MostBytes);
        fields.Time("sentAt");
        return id is null || text is null ? null : new Inbound(id, line.Name, from, text);
    }
}
