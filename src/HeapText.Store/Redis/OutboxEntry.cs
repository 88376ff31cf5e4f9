using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;

namespace HeapText.Store.Redis;

/// <summary>A message in a farmer's outbox: "VVVVVVVVVVVVIIII P LINE\nID\n" and the packed message.</summary>
/// <remarks>V is the version of the commit and I the place in it, so that entries of one moment sort as they were
/// committed; P, LINE and ID are what the scripts need to read.</remarks>
internal static class OutboxEntry
{
    /// <summary>The entry of a commit's message.</summary>
    /// <exception cref="ArgumentException">The line or id holds a line break.</exception>
    public static byte[] Of(Outbound message, long version, int place)
    {
        if ((message.Line + message.Id).Contains('\n', StringComparison.Ordinal))
            throw new ArgumentException("A line's name or a message's id holds a line break.", nameof(message));
        var head = $"{version:D12}{place:D4} {(int)message.Priority} {message.Line}\n{message.Id}\n";
        return [.. Encoding.UTF8.GetBytes(head), .. RecordFormat.Pack(message)];
    }

    /// <summary>The message back.</summary>
    public static Outbound Message(byte[] entry)
    {
        var line = Array.IndexOf(entry, (byte)'\n');
        var id = Array.IndexOf(entry, (byte)'\n', line + 1);
        return RecordFormat.Unpack<Outbound>(entry.AsMemory(id + 1));
    }
}
