using System.Text;
using HeapText.Carriers.Mapped;

namespace HeapText.Service.Verbs;

/// <summary>Reads a request as it goes over the wire: request line, headers, an empty line, the body.</summary>
internal static class SampleRequest
{
    /// <summary>The request; null when it is none, with the fault.</summary>
    public static HookRequest? Read(byte[] sample, out string fault)
    {
        var (end, start) = EndOfHead(sample);
        var lines = Encoding.UTF8.GetString(sample, 0, end).Split('\n').Select(line => line.TrimEnd('\r')).ToList();
        fault = "line 1: it is no request line; write one like POST /sms/lake HTTP/1.1";
        if (lines[0].Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var method, ['/', ..] target, ..])
            return null;
        var headers = new HeaderDictionary();
        for (var i = 1; i < lines.Count; i++)
        {
            var colon = lines[i].IndexOf(':', StringComparison.Ordinal);
            if (colon < 1)
            {
                fault = $"line {i + 1}: it is no header; write one like Content-Type: application/json, "
                    + "and an empty line before the body";
                return null;
            }

            headers.Append(lines[i][..colon].Trim(), lines[i][(colon + 1)..].Trim());
        }

        fault = "";
        var address = target.Split('?', 2);
        return new HookRequest(
            method, address[0], address.Length > 1 ? address[1] : "", headers, Body(sample[start..], headers));
    }

    // Without a length, the end of the last line is the editor's rather than the gateway's.
    private static byte[] Body(byte[] rest, HeaderDictionary headers)
    {
        if (headers.ContentLength is { } length && length <= rest.Length) return rest[..(int)length];
        if (rest is [.. var most, (byte)'\r', (byte)'\n']) return most;
        return rest is [.. var all, (byte)'\n'] ? all : rest;
    }

    private static (int End, int Start) EndOfHead(byte[] sample)
    {
        foreach (var (mark, taken) in new[] { ("\r\n\r\n", 4), ("\n\n", 2) })
        {
            var at = sample.AsSpan().IndexOf(Encoding.ASCII.GetBytes(mark));
            if (at >= 0) return (at, at + taken);
        }

        var end = sample.Length;
        while (end > 0 && sample[end - 1] is (byte)'\n' or (byte)'\r') end--;
        return (end, sample.Length);
    }
}
