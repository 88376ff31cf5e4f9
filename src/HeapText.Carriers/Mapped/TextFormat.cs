using System.Net.Http.Headers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Xml;

namespace HeapText.Carriers.Mapped;

/// <summary>What surrounds a value that is put into a template, and so how it must be escaped.</summary>
public enum TextFormat
{
    /// <summary>Plain text.</summary>
    Plain,

    /// <summary>A string of a JSON document.</summary>
    Json,

    /// <summary>An element or an attribute of an XML document.</summary>
    Xml,

    /// <summary>A field of a form, or of the query of an address.</summary>
    Form,
}

/// <summary>Knows formats by their content type and escapes for each.</summary>
public static class TextFormats
{
    /// <summary>The format of a content type; null when it is none we can write, or not UTF-8.</summary>
    public static TextFormat? Of(string contentType)
    {
        if (!MediaTypeHeaderValue.TryParse(contentType, out var type)) return null;
        if (type.CharSet is { } charset && !charset.Trim('"').Equals("utf-8", StringComparison.OrdinalIgnoreCase))
            return null;
        return type.MediaType?.ToLowerInvariant() switch
        {
            "text/plain" => TextFormat.Plain,
            "application/x-www-form-urlencoded" => TextFormat.Form,
            "application/json" => TextFormat.Json,
            "application/xml" or "text/xml" => TextFormat.Xml,
            { } other when other.EndsWith("+json", StringComparison.Ordinal) => TextFormat.Json,
            { } other when other.EndsWith("+xml", StringComparison.Ordinal) => TextFormat.Xml,
            _ => null,
        };
    }

    /// <summary>A value so written that, read back in the format, it is the same; half characters, and in XML the
    /// characters it cannot hold, become U+FFFD.</summary>
    public static string Escape(this TextFormat format, string value)
    {
        var whole = Whole(value);
        return format switch
        {
            TextFormat.Json => JsonEncodedText.Encode(whole, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).ToString(),
            TextFormat.Xml => EscapeXml(whole),
            TextFormat.Form => Uri.EscapeDataString(whole),
            _ => whole,
        };
    }

    private static string Whole(string value)
    {
        if (!value.Any(char.IsSurrogate)) return value;
        var text = new StringBuilder(value.Length);
        foreach (var rune in value.EnumerateRunes()) text.Append(rune.ToString());
        return text.ToString();
    }

    private static string EscapeXml(string whole)
    {
        var text = new StringBuilder(whole.Length);
        foreach (var c in whole)
        {
            text.Append(c switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                '\'' => "&apos;",
                // As they stand, a reader would make other white space of them.
                '\r' => "&#xD;",
                '\n' => "&#xA;",
                '\t' => "&#x9;",
                _ when XmlConvert.IsXmlChar(c) || char.IsSurrogate(c) => c.ToString(),
                _ => "\uFFFD",
            });
        }

        return text.ToString();
    }
}
