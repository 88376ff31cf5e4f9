using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;

namespace HeapText.Store.Redis;

/// <summary>A message in a farmer's outbox: "VVVVVVVVVVVVIIII P LINE\nID\n" and the packed message.</summary>
/// <remarks>V is the version of the commit and I the place in it, so that entries of one moment sort as they were
/// committed; P, LINE and ID are what the scripts need to read.</remarks>
internal static class OutboxEntry
{
    private const int OrderLength = 16;

    /// <summary>The entry of a commit's message.</summary>
    /// <exception cref="ArgumentException">The line or id holds a line break.</exception>
    public static byte[] Of(Outbound message, long version, int place) =>
        Of((message.Priority, message.Line, message.Id, RecordFormat.Pack(message)), version, place);

    /// <summary>The entry of these parts.</summary>
    /// <exception cref="ArgumentException">The line or id holds a line break.</exception>
    public static byte[] Of((Priority Priority, string Line, string Id, byte[] Packed) parts, long version, int place)
    {
        if ((parts.Line + parts.Id).Contains('\n', StringComparison.Ordinal))
            throw new ArgumentException("A line's name or a message's id holds a line break.", nameof(parts));
        var head = $"{version:D12}{place:D4} {(int)parts.Priority} {parts.Line}\n{parts.Id}\n";
        return [.. Encoding.UTF8.GetBytes(head), .. parts.Packed];
    }

    /// <summary>What the entry holds beside version and place.</summary>
    public static (Priority Priority, string Line, string Id, byte[] Packed) Parts(byte[] entry)
    {
        var (line, id) = Ends(entry);
        return ((Priority)(entry[OrderLength + 1] - '0'),
            Encoding.UTF8.GetString(entry.AsSpan((OrderLength + 3)..line)),
            Encoding.UTF8.GetString(entry.AsSpan((line + 1)..id)), entry[(id + 1)..]);
    }

    /// <summary>The message back.</summary>
    public static Outbound Message(byte[] entry) => RecordFormat.Unpack<Outbound>(entry.AsMemory(Ends(entry).Id + 1));

    /// <summary>Where line and id end.</summary>
    private static (int Line, int Id) Ends(byte[] entry)
    {
        var line = Array.IndexOf(entry, (byte)'\n');
        return (line, Array.IndexOf(entry, (byte)'\n', line + 1));
    }
}
