using System.Text;
using System.Text.RegularExpressions;

namespace HeapText.Carriers.Mapped;

/// <summary>Words with places to be filled in, each a name in lower case between braces, like {text}.</summary>
public sealed partial record Template
{
    private readonly IReadOnlyList<(string Literal, string? Name)> _pieces;

    private Template(string text, IReadOnlyList<(string, string?)> pieces) => (Text, _pieces) = (text, pieces);

    /// <summary>The template as it was written.</summary>
    public string Text { get; }

    /// <summary>The names in it, in order.</summary>
    public IEnumerable<string> Names => _pieces.Select(piece => piece.Name).OfType<string>();

    /// <summary>Reads a template; braces around anything but a name stand for themselves.</summary>
    public static Template Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<(string, string?)> pieces = [];
        var at = 0;
        foreach (Match found in Placeholder().Matches(text))
        {
            pieces.Add((text[at..found.Index], found.Groups[1].Value));
            at = found.Index + found.Length;
        }

        pieces.Add((text[at..], null));
        return new Template(text, pieces);
    }

    /// <summary>The filled-in text.</summary>
    /// <param name="format">What surrounds the values.</param>
    /// <param name="value">Gives the value of a name.</param>
    public string Fill(TextFormat format, Func<string, string> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var text = new StringBuilder();
        foreach (var (literal, name) in _pieces)
        {
            text.Append(literal);
            if (name is not null) text.Append(format.Escape(value(name)));
        }

        return text.ToString();
    }

    /// <summary>The filled-in bytes, each value as it is.</summary>
    internal byte[] FillBytes(Func<string, ReadOnlyMemory<byte>> value)
    {
        using var bytes = new MemoryStream();
        foreach (var (literal, name) in _pieces)
        {
            bytes.Write(Encoding.UTF8.GetBytes(literal));
            if (name is not null) bytes.Write(value(name).Span);
        }

        return bytes.ToArray();
    }

    [GeneratedRegex(@"\{([a-z][a-z0-9]*(?:-[a-z0-9]+)*(?::[A-Za-z0-9-]+)?)\}")]
    private static partial Regex Placeholder();
}
