using System.Buffers;
using System.Buffers.Binary;
using System.Diagnostics;
using System.Net.Sockets;
using HeapText.Carriers.Smpp;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Benchmarks.Smpp;

/// <summary>The same submit_sm, formed beforehand, written and answered over the same kind of socket: no more than the
/// window on the way, and nothing else done.</summary>
internal static class BareLoop
{
    private const int HeaderLength = 16;

    /// <summary>Answers a second.</summary>
    public static async Task<double> Submit(
        int port, SmppLineOptions line, Outbound message, Msisdn to, TimeSpan time, int window)
    {
        using var client = new TcpClient { NoDelay = true };
        await client.ConnectAsync("127.0.0.1", port);
        var stream = client.GetStream();
        var one = Formed(line, message, to);
        var writes = new byte[one.Length * window];
        for (var i = 0; i < window; i++) one.CopyTo(writes, i * one.Length);
        var reads = new byte[64 * 1024];
        var clock = Stopwatch.StartNew();
        long answered = 0;
        int free = window, held = 0;
        while (clock.Elapsed < time)
        {
            if (free > 0) await stream.WriteAsync(writes.AsMemory(0, free * one.Length));
            held += await stream.ReadAsync(reads.AsMemory(held));
            (free, held) = Count(reads, held);
            answered += free;
        }

        return answered / clock.Elapsed.TotalSeconds;
    }

    private static byte[] Formed(SmppLineOptions line, Outbound message, Msisdn to)
    {
        var octets = new ArrayBufferWriter<byte>();
        var body = new OutboundParts(line).Of(message, to, message.ExpiresAt - Duration.FromHours(1))[0];
        PduWriter.Write(new Pdu.SubmitSm(1, body), octets);
        return octets.WrittenSpan.ToArray();
    }

    /// <summary>How many answers there are, and how many octets of another.</summary>
    private static (int Answers, int Left) Count(byte[] reads, int held)
    {
        int answers = 0, at = 0;
        while (held - at >= HeaderLength)
        {
            var length = (int)BinaryPrimitives.ReadUInt32BigEndian(reads.AsSpan(at));
            if (held - at < length) break;
            at += length;
            answers++;
        }

        reads.AsSpan(at, held - at).CopyTo(reads);
        return (answers, held - at);
    }
}
