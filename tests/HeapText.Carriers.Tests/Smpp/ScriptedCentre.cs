using System.Buffers;
using System.IO.Pipelines;
using System.Net;
using System.Net.Sockets;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp;

/// <summary>A message centre on loopback that does what a test tells it, however odd.</summary>
internal sealed class ScriptedCentre : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    public ScriptedCentre() => _listener.Start();

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>The next connection.</summary>
    public async Task<CentreLink> Accept()
    {
        using var patience = new CancellationTokenSource(CentreLink.Patience);
        return new CentreLink(await _listener.AcceptTcpClientAsync(patience.Token));
    }

    /// <summary>The next connection, bound.</summary>
    public async Task<CentreLink> AcceptBound()
    {
        var link = await Accept();
        var bind = await link.Read<Pdu.Bind>();
        await link.Write(new Pdu.BindResp(bind.Sequence, CommandStatus.Ok, bind.Mode, "centre", Tlvs.None));
        return link;
    }

    public void Dispose() => _listener.Dispose();
}

/// <summary>One connection of it.</summary>
internal sealed class CentreLink(TcpClient client) : IDisposable
{
    /// <summary>Longer than anything takes that works.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly NetworkStream _stream = client.GetStream();
    private readonly PipeReader _input = PipeReader.Create(client.GetStream());

    /// <summary>The next PDU; null when the line hung up.</summary>
    public async Task<Pdu?> Next()
    {
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            while (true)
            {
                var result = await _input.ReadAsync(patience.Token);
                var buffer = result.Buffer;
                var isRead = PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var pdu);
                _input.AdvanceTo(buffer.Start, isRead ? buffer.Start : result.Buffer.End);
                if (isRead) return pdu;
                if (result.IsCompleted) return null;
            }
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>The next PDU of a kind; enquire_links before it are answered, nothing else may come.</summary>
    public async Task<T> Read<T>()
        where T : Pdu
    {
        while (true)
        {
            var next = await Next();
            if (next is T wanted) return wanted;
            var enquiry = Assert.IsType<Pdu.EnquireLink>(next);
            await Write(new Pdu.EnquireLinkResp(enquiry.Sequence, CommandStatus.Ok));
        }
    }

    public async Task Write(params Pdu[] pdus)
    {
        var octets = new ArrayBufferWriter<byte>();
        foreach (var pdu in pdus) PduWriter.Write(pdu, octets);
        await WriteOctets(octets.WrittenMemory);
    }

    public async Task WriteOctets(ReadOnlyMemory<byte> octets)
    {
        await _stream.WriteAsync(octets);
        await _stream.FlushAsync();
    }

    /// <summary>Takes the next submit_sm under an id.</summary>
    public async Task<MessageBody> TakeAs(string id)
    {
        var submit = await Read<Pdu.SubmitSm>();
        await Write(new Pdu.SubmitSmResp(submit.Sequence, CommandStatus.Ok, id));
        return submit.Body;
    }

    /// <summary>Delivers a message and waits for the answer.</summary>
    public async Task<CommandStatus> Deliver(MessageBody body, uint sequence = 1)
    {
        await Write(new Pdu.DeliverSm(sequence, body));
        var answer = await Read<Pdu.DeliverSmResp>();
        Assert.Equal(sequence, answer.Sequence);
        return answer.Status;
    }

    /// <summary>Breaks the connection without taking leave.</summary>
    public void Cut()
    {
        client.LingerState = new LingerOption(true, 0);
        client.Close();
    }

    public void Dispose() => client.Dispose();
}
