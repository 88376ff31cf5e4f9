using HeapText.Dialog.Ports;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of a hook for missed calls, and names every fault in it.</summary>
internal static class CallBody
{
    /// <summary>The call; null when there is a fault, which is then told.</summary>
    public static MissedCall? Read(ReadOnlyMemory<byte> body, InboundLine line, out string fault) =>
        JsonBody.Read(body, ["id", "from"], fields => Read(fields, line), out fault);

    private static MissedCall? Read(JsonBody fields, InboundLine line)
    {
        var id = fields.Text("id", 1, JsonBody.LongestId);
        var from = fields.From(line);
        return id is null ? null : new MissedCall(id, line.Name, from);
    }
}
