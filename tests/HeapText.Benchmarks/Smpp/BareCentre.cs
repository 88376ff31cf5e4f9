using System.Buffers;
using System.Buffers.Binary;
using System.IO.Pipelines;
using System.Net;
using System.Net.Sockets;

namespace HeapText.Benchmarks.Smpp;

/// <summary>A message centre that does nothing but answer, with octets formed beforehand.</summary>
internal sealed class BareCentre : IDisposable
{
    private const int HeaderLength = 16;
    private const uint SubmitSm = 0x04, ResponseBit = 0x80000000;
    private static readonly byte[] Id = "0000000001\0"u8.ToArray();
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    public BareCentre()
    {
        _listener.Start();
        _ = Task.Run(Listen);
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public void Dispose() => _listener.Dispose();

    private async Task Listen()
    {
        try
        {
            while (true) _ = Serve(await _listener.AcceptTcpClientAsync());
        }
        catch (Exception over) when (over is ObjectDisposedException or SocketException)
        {
            // The measuring is over.
        }
    }

    private static async Task Serve(TcpClient client)
    {
        using var _ = client;
        client.NoDelay = true;
        var input = PipeReader.Create(client.GetStream());
        var output = PipeWriter.Create(client.GetStream());
        try
        {
            while (true)
            {
                var read = await input.ReadAsync();
                var buffer = read.Buffer;
                while (Answer(ref buffer, output)) { }
                input.AdvanceTo(buffer.Start, buffer.End);
                await output.FlushAsync();
                if (read.IsCompleted) return;
            }
        }
        catch (IOException)
        {
            // The line went away.
        }
    }

    private static bool Answer(ref ReadOnlySequence<byte> buffer, PipeWriter output)
    {
        if (buffer.Length < HeaderLength) return false;
        Span<byte> header = stackalloc byte[HeaderLength];
        buffer.Slice(0, HeaderLength).CopyTo(header);
        var length = BinaryPrimitives.ReadUInt32BigEndian(header);
        if (buffer.Length < length) return false;
        buffer = buffer.Slice(length);
        var command = BinaryPrimitives.ReadUInt32BigEndian(header[4..]);
        if (command >= ResponseBit) return true;
        var body = command == SubmitSm ? Id : "\0"u8;
        var answer = output.GetSpan(HeaderLength + body.Length);
        header.CopyTo(answer);
        BinaryPrimitives.WriteUInt32BigEndian(answer, (uint)(HeaderLength + body.Length));
        BinaryPrimitives.WriteUInt32BigEndian(answer[4..], command | ResponseBit);
        body.CopyTo(answer[HeaderLength..]);
        output.Advance(HeaderLength + body.Length);
        return true;
    }
}
