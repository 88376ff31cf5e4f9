using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace HeapText.Carriers.Mapped;

/// <summary>Where a value stands in a JSON document.</summary>
/// <remarks>Source: RFC 6901, JSON Pointer.</remarks>
public sealed partial record JsonPointer
{
    private readonly IReadOnlyList<string> _steps;

    private JsonPointer(string text, IReadOnlyList<string> steps) => (Text, _steps) = (text, steps);

    /// <summary>The pointer as it was written.</summary>
    public string Text { get; }

    /// <summary>Reads a pointer; null when it is none.</summary>
    public static JsonPointer? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!Form().IsMatch(text)) return null;
        return new JsonPointer(text, [.. text.Split('/').Skip(1).Select(Unescape)]);
    }

    /// <summary>The value it points to; null when there is none.</summary>
    public JsonElement? Find(JsonElement document)
    {
        var at = document;
        foreach (var step in _steps)
        {
            if (at.ValueKind == JsonValueKind.Object && at.TryGetProperty(step, out var inside)) at = inside;
            else if (at.ValueKind == JsonValueKind.Array && Index(step) is { } i && i < at.GetArrayLength()) at = at[i];
            else return null;
        }

        return at;
    }

    private static int? Index(string step) =>
        int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            && (step.Length == 1 || step[0] != '0')
                ? index
                : null;

    private static string Unescape(string step) => step
        .Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);

    [GeneratedRegex(@"\A(/([^~/]|~[01])*)*\z")]
    private static partial Regex Form();
}
