using HeapText.Dialog.Ports;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of a USSD hook, and names every fault in it.</summary>
internal static class UssdBody
{
    /// <summary>The step; null when there is a fault, which is then told.</summary>
    public static Dialled? Read(ReadOnlyMemory<byte> body, InboundLine line, out string fault) =>
        JsonBody.Read(
            body, ["session", "from", "code", "input", "step"], fields => Read(fields, line), out fault);

    private static Dialled? Read(JsonBody fields, InboundLine line)
    {
        var session = fields.Text("session", 1, JsonBody.LongestId);
        var from = fields.From(line);
        fields.Text("code", 1, JsonBody.LongestAddress);
        var input = fields.Text("input", 0, HookBody.MostBytes);
        var step = fields.Count("step");
        return session is null || input is null ? null : new Dialled(session, step, line.Name, from, input);
    }
}
