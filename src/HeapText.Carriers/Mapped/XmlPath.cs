using System.Xml;
using System.Xml.Linq;

namespace HeapText.Carriers.Mapped;

/// <summary>Where a value stands in an XML document: names of elements from the outside in, the last of which may be an
/// attribute, as in "/letter/sender/@number". Namespaces do not matter.</summary>
public sealed record XmlPath
{
    private readonly IReadOnlyList<string> _elements;
    private readonly string? _attribute;

    private XmlPath(string text, IReadOnlyList<string> elements, string? attribute) =>
        (Text, _elements, _attribute) = (text, elements, attribute);

    /// <summary>The path as it was written.</summary>
    public string Text { get; }

    /// <summary>True when it names elements rather than an attribute.</summary>
    public bool NamesElements => _attribute is null;

    /// <summary>Reads a path; null when it is none.</summary>
    public static XmlPath? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.StartsWith('/')) return null;
        var steps = text[1..].Split('/');
        var attribute = steps[^1].StartsWith('@') ? steps[^1][1..] : null;
        string[] elements = attribute is null ? steps : steps[..^1];
        return elements.Append(attribute ?? elements[0]).All(IsName) ? new XmlPath(text, elements, attribute) : null;
    }

    /// <summary>Every element the path names.</summary>
    public IEnumerable<XElement> Elements(XContainer outside)
    {
        IEnumerable<XContainer> at = [outside];
        foreach (var name in _elements)
            at = at.SelectMany(one => one.Elements().Where(inside => inside.Name.LocalName == name));
        return at.OfType<XElement>();
    }

    /// <summary>Every value the path names.</summary>
    public IEnumerable<string> Values(XContainer outside) => _attribute is null
        ? Elements(outside).Select(element => element.Value)
        : Elements(outside).SelectMany(element => element.Attributes())
            .Where(one => one.Name.LocalName == _attribute && !one.IsNamespaceDeclaration).Select(one => one.Value);

    private static bool IsName(string name)
    {
        try
        {
            XmlConvert.VerifyNCName(name);
            return true;
        }
        catch (Exception fault) when (fault is XmlException or ArgumentException)
        {
            return false;
        }
    }
}
