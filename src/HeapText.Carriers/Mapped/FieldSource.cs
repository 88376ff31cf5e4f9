using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using System.Xml;
using System.Xml.Linq;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;

namespace HeapText.Carriers.Mapped;

/// <summary>What fields are read from: a request, one message of a request that brings several, or the answer to a
/// request. The body is taken for what the field says it is.</summary>
public sealed class FieldSource
{
    private const int DeepestJson = 16;
    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];
    private static readonly JsonDocumentOptions Json =
        new() { MaxDepth = DeepestJson, AllowDuplicateProperties = false };
    private static readonly XmlReaderSettings Xml = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        CheckCharacters = true,
    };

    private readonly Func<string, StringValues> _header;
    private readonly ReadOnlyMemory<byte> _body;
    private readonly Lazy<Dictionary<string, StringValues>> _query;
    private readonly Lazy<Dictionary<string, StringValues>> _form;
    private readonly Lazy<(JsonElement Root, string? Fault)> _json;
    private readonly Lazy<(XContainer? Root, string? Fault)> _xml;

    /// <summary>Opens a request or an answer.</summary>
    /// <param name="header">Gives the values of a header; none when it is not there.</param>
    /// <param name="query">The query of the address; empty for an answer.</param>
    /// <param name="body">The body.</param>
    public FieldSource(Func<string, StringValues> header, string query, ReadOnlyMemory<byte> body)
    {
        (_header, _body) = (header, body);
        _query = new(() => QueryHelpers.ParseQuery(query));
        _form = new(() => QueryHelpers.ParseQuery(Encoding.UTF8.GetString(body.Span)));
        _json = new(() => ReadJson(body));
        _xml = new(() => ReadXml(body));
    }

    private FieldSource(FieldSource whole, JsonElement item)
        : this(whole) => _json = new((item, null));

    private FieldSource(FieldSource whole, XContainer item)
        : this(whole) => _xml = new((item, null));

    private FieldSource(FieldSource whole) => (_header, _body, _query, _form, _json, _xml) =
        (whole._header, whole._body, whole._query, whole._form, whole._json, whole._xml);

    /// <summary>Opens a request.</summary>
    public static FieldSource Of(HookRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return new FieldSource(name => request.Headers[name], request.Query, request.Body);
    }

    /// <summary>What stands in a field.</summary>
    public FieldValue Read(Field field)
    {
        ArgumentNullException.ThrowIfNull(field);
        foreach (var place in field.Places)
        {
            if (ReadPlace(place) is not FieldValue.Missing and var value) return value;
        }

        return new FieldValue.Missing();
    }

    /// <summary>The messages a request brings; null when they cannot be told apart, with the fault.</summary>
    /// <param name="each">Where the list of them stands; null for a request that brings one.</param>
    /// <param name="fault">Fault and fix.</param>
    public IReadOnlyList<FieldSource>? Items(Place? each, out string fault)
    {
        fault = "";
        switch (each)
        {
            case null:
                return [this];
            case Place.Json(var pointer):
                fault = _json.Value.Fault ?? "";
                if (fault.Length > 0) return null;
                if (pointer.Find(_json.Value.Root) is { ValueKind: JsonValueKind.Array } list)
                    return [.. list.EnumerateArray().Select(item => new FieldSource(this, item))];
                break;
            case Place.Xml(var path):
                fault = _xml.Value.Fault ?? "";
                if (fault.Length > 0) return null;
                return [.. path.Elements(_xml.Value.Root!).Select(item => new FieldSource(this, item))];
        }

        fault = "there is no list; send one";
        return null;
    }

    private FieldValue ReadPlace(Place place) => place switch
    {
        Place.Constant(var text) => new FieldValue.Found([text]),
        Place.Query(var name) => Single(_query.Value.GetValueOrDefault(name)),
        Place.Header(var name) => Single(_header(name)),
        Place.Form(var name) => Utf8.IsValid(_body.Span)
            ? Single(_form.Value.GetValueOrDefault(name))
            : new FieldValue.Broken("the body is not UTF-8; send it in UTF-8"),
        Place.Body body => OfBody(body),
        Place.Json(var pointer) => _json.Value.Fault is { } fault ? new FieldValue.Broken(fault)
            : pointer.Find(_json.Value.Root) is { } value ? OfJson(value) : new FieldValue.Missing(),
        Place.Xml(var path) => _xml.Value.Fault is { } fault ? new FieldValue.Broken(fault)
            : path.Values(_xml.Value.Root!).ToList() is { Count: > 0 } values ? new FieldValue.Found(values)
            : new FieldValue.Missing(),
        _ => new FieldValue.Missing(),
    };

    private static FieldValue Single(StringValues values) => values.Count switch
    {
        0 => new FieldValue.Missing(),
        1 => new FieldValue.Found([values.ToString()]),
        _ => new FieldValue.Broken("it stands there more than once; send it once"),
    };

    private FieldValue OfBody(Place.Body place)
    {
        if (!Utf8.IsValid(_body.Span)) return new FieldValue.Broken("the body is not UTF-8; send it in UTF-8");
        var text = Encoding.UTF8.GetString(_body.Span).Trim();
        var start = text.IndexOf(place.Before, StringComparison.Ordinal);
        if (start < 0) return new FieldValue.Missing();
        start += place.Before.Length;
        var end = place.After.Length == 0 ? text.Length : text.IndexOf(place.After, start, StringComparison.Ordinal);
        return end < 0 ? new FieldValue.Missing() : new FieldValue.Found([text[start..end].Trim()]);
    }

    private static FieldValue OfJson(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Null) return new FieldValue.Missing();
        var values = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().ToList() : [value];
        if (values.Count == 0) return new FieldValue.Missing();
        List<string> texts = [];
        foreach (var one in values)
        {
            if (one.ValueKind is JsonValueKind.Object or JsonValueKind.Array or JsonValueKind.Null)
                return new FieldValue.Broken("it holds more than a text or number; send one of those");
            if (TextOf(one) is not { } text)
                return new FieldValue.Broken("it holds half a character (a lone surrogate); send whole characters");
            texts.Add(text);
        }

        return new FieldValue.Found(texts);
    }

    private static string? TextOf(JsonElement value)
    {
        if (value.ValueKind != JsonValueKind.String) return value.GetRawText();
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static (JsonElement, string?) ReadJson(ReadOnlyMemory<byte> body)
    {
        try
        {
            using var document = JsonDocument.Parse(
                body.Span.StartsWith(ByteOrderMark) ? body[ByteOrderMark.Length..] : body, Json);
            return (document.RootElement.Clone(), null);
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            return (default, $"the body is not well-formed JSON, each name once, at most {DeepestJson} levels deep");
        }
    }

    private static (XContainer?, string?) ReadXml(ReadOnlyMemory<byte> body)
    {
        try
        {
            using var bytes = new MemoryStream(body.ToArray(), writable: false);
            using var reader = XmlReader.Create(bytes, Xml);
            return (XDocument.Load(reader), null);
        }
        catch (Exception broken) when (broken is XmlException or ArgumentException)
        {
            return (null, "the body is not well-formed XML without a document type");
        }
    }
}
