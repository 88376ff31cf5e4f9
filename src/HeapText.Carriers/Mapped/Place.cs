using System.Text.RegularExpressions;

namespace HeapText.Carriers.Mapped;

/// <summary>One place where a field may stand in a request, or in the answer to one.</summary>
public abstract partial record Place
{
    private Place() { }

    /// <summary>In the JSON body.</summary>
    public sealed record Json(JsonPointer Path) : Place;

    /// <summary>In the XML body.</summary>
    public sealed record Xml(XmlPath Path) : Place;

    /// <summary>In the body of a form (application/x-www-form-urlencoded).</summary>
    public sealed record Form(string Name) : Place;

    /// <summary>In the query of the address.</summary>
    public sealed record Query(string Name) : Place;

    /// <summary>In a header.</summary>
    public sealed record Header(string Name) : Place;

    /// <summary>The body as text, or what stands in it between two words.</summary>
    public sealed record Body(string Before, string After) : Place;

    /// <summary>Nowhere: it is always the same.</summary>
    public sealed record Constant(string Text) : Place;

    /// <summary>Worked out from the sender, the text and the time.</summary>
    public sealed record Hash : Place;

    /// <summary>What it is a part of; null for one that is not read from the body.</summary>
    public string? BodyKind => this switch
    {
        Json => "JSON",
        Xml => "XML",
        Form => "form",
        Body => "text",
        _ => null,
    };

    /// <summary>Reads a place; null when it is none, with what is wrong and what to write.</summary>
    public static Place? Parse(string text, out string fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var kind = colon < 0 ? "" : text[..colon];
        var rest = text[(colon + 1)..];
        var place = OfKind(kind, rest);
        fault = place is null ? Fix(kind) : "";
        return place;
    }

    private static Place? OfKind(string kind, string rest) => kind switch
    {
        "json" => JsonPointer.Parse(rest) is { } pointer ? new Json(pointer) : null,
        "xml" => XmlPath.Parse(rest) is { } path ? new Xml(path) : null,
        "form" => rest.Length > 0 ? new Form(rest) : null,
        "query" => rest.Length > 0 ? new Query(rest) : null,
        "header" => HeaderText.IsName(rest) ? new Header(rest) : null,
        "body" => OfBody(rest),
        "text" => new Constant(rest),
        "hash" => rest.Length == 0 ? new Hash() : null,
        _ => null,
    };

    private static string Fix(string kind) => kind switch
    {
        "json" => "holds no JSON Pointer (RFC 6901); write one like json:/message/sender",
        "xml" => "holds no path; write one like xml:/message/sender or xml:/message/sender/@number",
        "form" => "names no field; write one like form:sender",
        "query" => "names no parameter; write one like query:sender",
        "header" => "names no header; write one like header:X-Sender",
        "body" => "holds more than one star; write one for what is wanted, as in body:number *, or body: for all of it",
        "hash" => "takes nothing after it; write hash:",
        _ => "is no place; write json:, xml:, form:, query:, header:, body: or text: and what it is called there, like "
            + "json:/sender",
    };

    private static Body? OfBody(string rest)
    {
        if (rest.Length == 0) return new Body("", "");
        return rest.Split('*') is [var before, var after] ? new Body(before, after) : null;
    }

    /// <summary>Parts places that are tried one after the other.</summary>
    [GeneratedRegex(@"\s+\|\s+(?=(?:json|xml|form|query|header|body|text|hash):)")]
    internal static partial Regex Or();
}
