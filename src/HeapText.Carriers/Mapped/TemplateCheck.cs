using System.Globalization;
using System.Text.Json;
using System.Xml;
using System.Xml.Linq;
using Microsoft.AspNetCore.WebUtilities;

namespace HeapText.Carriers.Mapped;

/// <summary>Finds faults of templates before the first farmer does.</summary>
/// <remarks>A body is filled with values that hold everything a format gives a meaning to, and read back: each value
/// must come back whole, as a value.</remarks>
public static class TemplateCheck
{
    private const string Hostile = "<&>\"'\\{}[],:=+%;#/? \r\n\té\U0001F33D";

    /// <summary>What is wrong with a template; null when nothing is.</summary>
    /// <param name="template">The template.</param>
    /// <param name="format">What it is a document of.</param>
    /// <param name="names">The names that may stand in it.</param>
    public static string? FaultOf(Template template, TextFormat format, IReadOnlyCollection<string> names)
    {
        ArgumentNullException.ThrowIfNull(template);
        if (Unknown(template, names) is { } unknown) return unknown;
        List<string> given = [];
        var filled = template.Fill(format, name =>
        {
            if (Placeholders.Numbers.Contains(name)) return "7";
            given.Add(string.Create(CultureInfo.InvariantCulture, $"{given.Count}{Hostile}"));
            return given[^1];
        });
        try
        {
            var values = Values(filled, format);
            if (values is null || given.All(one => values.Any(value => value.Contains(one, StringComparison.Ordinal))))
                return null;
        }
        catch (Exception broken) when (broken is JsonException or XmlException)
        {
            // Said below.
        }

        return format switch
        {
            TextFormat.Json => "is no JSON once filled in; put texts between quotes inside a value, like "
                + "{\"words\":\"{text}\"}, and only numbers without quotes",
            TextFormat.Xml => "is no XML once filled in; put values inside an element or an attribute, like "
                + "<words>{text}</words>",
            _ => "is no form once filled in; put values after an equals sign, like words={text}&number={to}",
        };
    }

    /// <summary>The first name that may not stand in a template; null when there is none.</summary>
    public static string? Unknown(Template template, IReadOnlyCollection<string> names)
    {
        ArgumentNullException.ThrowIfNull(template);
        return template.Names.FirstOrDefault(name => !names.Contains(name)) is { } unknown
            ? $"names {{{unknown}}}, which cannot stand here; "
                + (names.Count == 0 ? "take it out" : $"use {string.Join(", ", names.Select(name => $"{{{name}}}"))}")
            : null;
    }

    private static List<string>? Values(string filled, TextFormat format) => format switch
    {
        _ when filled.Length == 0 => [],
        TextFormat.Json => [.. Strings(JsonDocument.Parse(filled).RootElement)],
        TextFormat.Xml => [.. Strings(XDocument.Parse(filled, LoadOptions.PreserveWhitespace))],
        TextFormat.Form => [.. QueryHelpers.ParseQuery(filled).Values.SelectMany(value => value).OfType<string>()],
        _ => null,
    };

    private static IEnumerable<string> Strings(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => [value.GetString()!],
        JsonValueKind.Array => value.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => value.EnumerateObject().SelectMany(one => Strings(one.Value)),
        _ => [],
    };

    private static IEnumerable<string> Strings(XDocument document) => document.DescendantNodes()
        .OfType<XText>().Where(text => text is not XCData).Select(text => text.Value)
        .Concat(document.Descendants().Attributes().Select(attribute => attribute.Value));
}
