using System.Globalization;
using System.Text.Json;
using System.Text.Unicode;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;
using NodaTime.Text;

namespace HeapText.Service.Hooks;

/// <summary>Reads the body of an SMS hook, and names every fault in it.</summary>
internal static class SmsBody
{
    private const int LongestId = 200;
    private const int LongestAddress = 64;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 8, AllowDuplicateProperties = false };
    private static readonly JsonDocumentOptions WithDuplicates = new() { MaxDepth = 8 };
    private static readonly string[] Fields = ["id", "from", "to", "text", "sentAt"];

    /// <summary>The message; null when there is a fault, which is then told.</summary>
    public static Inbound? Read(ReadOnlyMemory<byte> body, InboundLine line, out string fault)
    {
        fault = "";
        if (body.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            fault = "body: it is empty; send a JSON object with id, from, to and text.";
            return null;
        }

        if (!Utf8.IsValid(body.Span))
        {
            fault = "body: it is not UTF-8; send the JSON object in UTF-8.";
            return null;
        }

        try
        {
            using var document = JsonDocument.Parse(body, Strict);
            return Read(document.RootElement, line, out fault);
        }
        catch (JsonException broken)
        {
            var (row, column) = (broken.LineNumber + 1, broken.BytePositionInLine + 1);
            fault = row is null
                ? Duplicate(body)
                : string.Create(CultureInfo.InvariantCulture,
                    $"body: it is not well-formed JSON at line {row}, byte {column}; send one JSON object.");
            return null;
        }
    }

    private static string Duplicate(ReadOnlyMemory<byte> body)
    {
        using var document = JsonDocument.Parse(body, WithDuplicates);
        var root = document.RootElement;
        var twice = root.ValueKind == JsonValueKind.Object
            ? Fields.FirstOrDefault(field => root.EnumerateObject().Count(one => one.NameEquals(field)) > 1)
            : null;
        return twice is null
            ? "body: a field stands twice in the same object; send each once."
            : $"{twice}: it stands twice; send it once.";
    }

    private static Inbound? Read(JsonElement root, InboundLine line, out string fault)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            fault = "body: it is not a JSON object; send one with id, from, to and text.";
            return null;
        }

        var faults = new List<string>();
        var id = ReadText(root, "id", 1, LongestId, faults);
        var from = ReadText(root, "from", 1, LongestAddress, faults);
        ReadText(root, "to", 1, LongestAddress, faults);
        var text = ReadText(root, "text", 0, HookBody.MostBytes, faults);
        CheckSentAt(root, faults);

        var number = default(Msisdn);
        if (from is not null)
        {
            var reading = line.ReadNumber(from);
            if (reading is NumberReading.Good good) number = good.Number;
            else faults.Add($"from: {((NumberReading.Bad)reading).Why}.");
        }

        fault = string.Join(' ', faults);
        return faults.Count == 0 ? new Inbound(id!, line.Name, number, text!) : null;
    }

    private static string? ReadText(JsonElement root, string field, int shortest, int longest, List<string> faults)
    {
        if (!root.TryGetProperty(field, out var value) || value.ValueKind == JsonValueKind.Null)
        {
            faults.Add($"{field}: it is missing; send it as a string.");
            return null;
        }

        if (value.ValueKind != JsonValueKind.String)
        {
            faults.Add($"{field}: it is not a string; send it in quotes.");
            return null;
        }

        if (Decode(value) is not { } text)
            faults.Add($"{field}: it holds half a character (a lone surrogate); send whole characters.");
        else if (text.Length < shortest)
            faults.Add($"{field}: it is empty; send at least {shortest} character.");
        else if (text.Length > longest)
            faults.Add($"{field}: it is too long; send at most {longest} characters.");
        else
            return text;
        return null;
    }

    private static string? Decode(JsonElement value)
    {
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static void CheckSentAt(JsonElement root, List<string> faults)
    {
        if (!root.TryGetProperty("sentAt", out var value) || value.ValueKind == JsonValueKind.Null) return;
        if (value.ValueKind != JsonValueKind.String
            || Decode(value) is not { } text
            || !OffsetDateTimePattern.Rfc3339.Parse(text).Success)
        {
            faults.Add("sentAt: it is not a time; send one like 2026-03-02T07:00:00+03:00, or leave it out.");
        }
    }
}
