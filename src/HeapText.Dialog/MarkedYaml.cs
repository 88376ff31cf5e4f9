using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace HeapText.Dialog;

/// <summary>A YAML node that knows where it stands, and keeps repeated keys so that they can be reported.</summary>
internal abstract record MarkedYaml(int Line, int Column)
{
    public sealed record Text(string Value, int Line, int Column) : MarkedYaml(Line, Column);

    public sealed record List(IReadOnlyList<MarkedYaml> Items, int Line, int Column) : MarkedYaml(Line, Column);

    public sealed record Map(IReadOnlyList<(Text Key, MarkedYaml Value)> Entries, int Line, int Column)
        : MarkedYaml(Line, Column);

    /// <summary>Reads the first document.</summary>
    /// <exception cref="YamlException">It is not YAML, or uses aliases or keys that are not plain text.</exception>
    public static MarkedYaml Read(TextReader reader)
    {
        var scanner = new Scanner(reader);
        try
        {
            return ReadDocument(new Parser(scanner));
        }
        catch (InvalidOperationException fault)
        {
            // The scanner loses its way in some broken lists and says so in this manner.
            throw new YamlException(scanner.CurrentPosition, scanner.CurrentPosition, "This is not YAML.", fault);
        }
    }

    private static MarkedYaml ReadDocument(Parser parser)
    {
        parser.Consume<StreamStart>();
        if (parser.Accept<StreamEnd>(out var end))
            return new Map([], (int)end.Start.Line, (int)end.Start.Column);
        parser.Consume<DocumentStart>();
        return ReadNode(parser);
    }

    private static MarkedYaml ReadNode(Parser parser)
    {
        if (parser.TryConsume<Scalar>(out var scalar))
            return new Text(scalar.Value, (int)scalar.Start.Line, (int)scalar.Start.Column);
        if (parser.TryConsume<SequenceStart>(out var sequence))
            return new List(ReadItems(parser), (int)sequence.Start.Line, (int)sequence.Start.Column);
        if (parser.TryConsume<MappingStart>(out var mapping))
            return new Map(ReadEntries(parser), (int)mapping.Start.Line, (int)mapping.Start.Column);
        var other = parser.Current!;
        throw new YamlException(other.Start, other.End, "Only text, lists and maps may stand here.");
    }

    private static List<MarkedYaml> ReadItems(Parser parser)
    {
        var items = new List<MarkedYaml>();
        while (!parser.TryConsume<SequenceEnd>(out _))
            items.Add(ReadNode(parser));
        return items;
    }

    private static List<(Text, MarkedYaml)> ReadEntries(Parser parser)
    {
        var entries = new List<(Text, MarkedYaml)>();
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = ReadNode(parser);
            if (key is not Text text)
                throw new YamlException(parser.Current!.Start, parser.Current.End, "A key must be plain text.");
            entries.Add((text, ReadNode(parser)));
        }

        return entries;
    }
}
