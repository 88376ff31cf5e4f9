using System.Buffers;

namespace HeapText.Carriers.Tests.Smpp.Wire;

/// <summary>A buffer in pieces, as a socket fills it.</summary>
internal sealed class Pieces : ReadOnlySequenceSegment<byte>
{
    public static ReadOnlySequence<byte> Of(ReadOnlyMemory<byte> octets, int length)
    {
        if (octets.IsEmpty) return ReadOnlySequence<byte>.Empty;
        var first = new Pieces { Memory = octets[..Math.Min(length, octets.Length)] };
        var last = first;
        for (var at = length; at < octets.Length; at += length)
        {
            var next = new Pieces
            {
                Memory = octets.Slice(at, Math.Min(length, octets.Length - at)),
                RunningIndex = at,
            };
            last.Next = next;
            last = next;
        }

        return new ReadOnlySequence<byte>(first, 0, last, last.Memory.Length);
    }
}
