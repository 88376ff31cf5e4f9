using HeapText.Dialog.Ports;
using NodaTime.Text;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of an SMS hook, and names every fault in it.</summary>
internal static class SmsBody
{
    private const int LongestId = 200;

    /// <summary>The message; null when there is a fault, which is then told.</summary>
    public static Inbound? Read(ReadOnlyMemory<byte> body, InboundLine line, out string fault) =>
        JsonBody.Read(body, ["id", "from", "to", "text"], fields => Read(fields, line), out fault);

    private static Inbound? Read(JsonBody fields, InboundLine line)
    {
        var id = fields.Text("id", 1, LongestId);
        var from = fields.From(line);
        fields.Text("to", 1, JsonBody.LongestAddress);
        var text = fields.Text("text", 0, HookBody.MostBytes);
        fields.Check("sentAt", time => OffsetDateTimePattern.Rfc3339.Parse(time).Success,
            "it is not a time; send one like 2026-03-02T07:00:00+03:00, or leave it out.");
        return id is null || text is null ? null : new Inbound(id, line.Name, from, text);
    }
}
