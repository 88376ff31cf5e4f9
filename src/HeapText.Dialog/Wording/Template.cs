using System.Text;

namespace HeapText.Dialog.Wording;

/// <summary>A text with named placeholders in braces, such as "Text JOIN {code}.".</summary>
public sealed class Template
{
    private readonly List<(string Text, bool IsSlot)> _parts = [];

    private Template(int line, int column) => (Line, Column) = (line, column);

    /// <summary>Line of the text in its file, from 1.</summary>
    public int Line { get; }

    /// <summary>Column of the text in its file, from 1.</summary>
    public int Column { get; }

    /// <summary>Names of the placeholders, in order of appearance.</summary>
    public IEnumerable<string> Slots => _parts.Where(p => p.IsSlot).Select(p => p.Text);

    /// <summary>Reads a text; a brace without its partner is an error.</summary>
    public static bool TryParse(string text, int line, int column, out Template template)
    {
        template = new Template(line, column);
        for (var at = 0; at < text.Length;)
        {
            var open = text.IndexOfAny(['{', '}'], at);
            if (open < 0) open = text.Length;
            if (open > at) template._parts.Add((text[at..open], false));
            if (open == text.Length) return true;
            var close = text.IndexOf('}', open);
            if (text[open] == '}' || close < 0) return false;
            template._parts.Add((text[(open + 1)..close], true));
            at = close + 1;
        }
        return true;
    }

    /// <summary>The same placeholders between other words.</summary>
    /// <param name="change">Gives the words for the words between placeholders.</param>
    internal Template Reworded(Func<string, string> change)
    {
        var other = new Template(Line, Column);
        other._parts.AddRange(_parts.Select(part => part.IsSlot ? part : (change(part.Text), false)));
        return other;
    }

    /// <summary>The text with every placeholder replaced by what <paramref name="word"/> gives for its name.</summary>
    public string Fill(Func<string, string> word)
    {
        var filled = new StringBuilder();
        foreach (var (text, isSlot) in _parts) filled.Append(isSlot ? word(text) : text);
        return filled.ToString();
    }

    public override string ToString() => Fill(name => $"{{{name}}}");
}
