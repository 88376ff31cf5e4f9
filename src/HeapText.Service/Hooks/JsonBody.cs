using System.Globalization;
using System.Text.Json;
using System.Text.Unicode;
using HeapText.Carriers.Mapped;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Hooks;

/// <summary>Reads the fields of a hook's JSON object, and names every fault in it.</summary>
internal sealed class JsonBody
{
    /// <summary>Longest telephone number or code.</summary>
    public const int LongestAddress = 64;

    /// <summary>Longest id of a message or session.</summary>
    public const int LongestId = 200;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 8, AllowDuplicateProperties = false };
    private static readonly JsonDocumentOptions WithDuplicates = new() { MaxDepth = 8 };

    private readonly JsonElement _root;
    private readonly List<string> _faults = [];

    private JsonBody(JsonElement root) => _root = root;

    /// <summary>Reads a body; null when there is a fault, which is then told.</summary>
    /// <param name="body">The bytes.</param>
    /// <param name="fields">The fields it holds, of which the first few are named in a fault of the whole.</param>
    /// <param name="read">Reads the fields.</param>
    /// <param name="fault">Every fault found.</param>
    public static T? Read<T>(
        ReadOnlyMemory<byte> body, IReadOnlyList<string> fields, Func<JsonBody, T?> read, out string fault)
        where T : class
    {
        fault = "";
        var wanted = $"{string.Join(", ", fields.SkipLast(1))} and {fields[^1]}";
        if (body.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            fault = $"body: it is empty; send a JSON object with {wanted}.";
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
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                fault = $"body: it is not a JSON object; send one with {wanted}.";
                return null;
            }

            var fieldsRead = new JsonBody(document.RootElement);
            var result = read(fieldsRead);
            fault = string.Join(' ', fieldsRead._faults);
            return fieldsRead._faults.Count == 0 ? result : null;
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

    /// <summary>A field that must be a string of some length; null when it is not.</summary>
    public string? Text(string field, int shortest, int longest)
    {
        if (!_root.TryGetProperty(field, out var value) || value.ValueKind == JsonValueKind.Null)
            _faults.Add($"{field}: it is missing; send it as a string.");
        else if (value.ValueKind != JsonValueKind.String)
            _faults.Add($"{field}: it is not a string; send it in quotes.");
        else if (Decode(value) is not { } text)
            _faults.Add($"{field}: it holds half a character (a lone surrogate); send whole characters.");
        else if (text.Length < shortest)
            _faults.Add($"{field}: it is empty; send at least {shortest} character.");
        else if (text.Length > longest)
            _faults.Add($"{field}: it is too long; send at most {longest} characters.");
        else
            return text;
        return null;
    }

    /// <summary>A field that must be a whole number from 0; 0 when it is not.</summary>
    public int Count(string field)
    {
        if (_root.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.Number
            && value.TryGetInt32(out var count) && count >= 0)
            return count;
        _faults.Add($"{field}: it is not a whole number from 0; send one that rises with each entry.");
        return 0;
    }

    /// <summary>The field "from": a telephone number as the line takes it.</summary>
    public Msisdn From(InboundLine line)
    {
        if (Text("from", 1, LongestAddress) is not { } from) return default;
        if (line.ReadNumber(from) is NumberReading.Good good) return good.Number;
        _faults.Add($"from: {((NumberReading.Bad)line.ReadNumber(from)).Why}.");
        return default;
    }

    /// <summary>A field that must be one of some words; null when it is not.</summary>
    public T? OneOf<T>(string field, IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (Text(field, 0, LongestAddress) is not { } text) return null;
        if (words.TryGetValue(text, out var value)) return value;
        _faults.Add($"{field}: it is none of {string.Join(", ", words.Keys)}; send one of these.");
        return null;
    }

    /// <summary>A time that may be absent; null when it is, or is none.</summary>
    public Instant? Time(string field)
    {
        if (!_root.TryGetProperty(field, out var value) || value.ValueKind == JsonValueKind.Null) return null;
        if (value.ValueKind == JsonValueKind.String && Decode(value) is { } text
            && TimeForm.Rfc3339.Read(text) is { } time)
            return time;
        _faults.Add($"{field}: it is not a time; send one like 2026-03-02T07:00:00+03:00, or leave it out.");
        return null;
    }

    private static string Duplicate(ReadOnlyMemory<byte> body)
    {
        using var document = JsonDocument.Parse(body, WithDuplicates);
        var root = document.RootElement;
        var twice = root.ValueKind == JsonValueKind.Object
            ? root.EnumerateObject().GroupBy(field => field.Name).FirstOrDefault(same => same.Count() > 1)?.Key
            : null;
        return twice is null
            ? "body: a field stands twice in the same object; send each once."
            : $"{twice}: it stands twice; send it once.";
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
}
