using System.Buffers;
using CsCheck;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class PduFuzzTests
{
    private const int Rounds = 200_000, Seed = 20260211, MostBytes = 4096;

    [Fact]
    public void TryRead_RandomAndMutatedOctets_FaultsOnlyAsPduFaultAndAlwaysGoesOn()
    {
        var random = new Random(Seed);
        var samples = Samples();
        var (read, faulty, fatal) = (0, 0, 0);
        for (var round = 0; round < Rounds; round++)
        {
            var stream = Stream(random, samples);
            var buffer = Pieces.Of(stream, random.Next(1, 64));
            while (true)
            {
                var before = buffer.Length;
                try
                {
                    if (!PduReader.TryRead(ref buffer, MostBytes, out var pdu)) break;
                    read++;
                    Look(pdu!);
                }
                catch (PduFaultException fault) when (fault.IsFatal)
                {
                    fatal++;
                    break;
                }
                catch (PduFaultException)
                {
                    faulty++;
                }

                Assert.InRange(before - buffer.Length, PduReader.HeaderLength, MostBytes);
            }
        }

        Assert.All([read, faulty, fatal], count => Assert.True(count > Rounds / 50, $"{read} {faulty} {fatal}"));
    }

    // Every accessor, so that none of them trusts what it finds.
    private static void Look(Pdu pdu)
    {
        var body = pdu switch { Pdu.SubmitSm one => one.Body, Pdu.DeliverSm one => one.Body, _ => new MessageBody() };
        var tlvs = body.Tlvs;
        _ = (tlvs.ItsSessionInfo, tlvs.MessageState, tlvs.NetworkError, tlvs.ReceiptedMessageId, tlvs.SarPart,
            tlvs.SarReference, tlvs.SarTotal, tlvs.UserMessageReference, tlvs.UssdServiceOp, body.UserData.Length);
    }

    private static byte[] Stream(Random random, byte[][] samples)
    {
        var stream = samples[random.Next(samples.Length)].ToArray();
        switch (random.Next(4))
        {
            case 0:
                random.NextBytes(stream.AsSpan(random.Next(PduReader.HeaderLength)..));
                break;
            case 1:
                stream = stream[..random.Next(stream.Length)];
                break;
            case 2:
                // A length that fits a body cut short.
                stream = stream[..random.Next(PduReader.HeaderLength, stream.Length + 1)];
                (stream[2], stream[3]) = ((byte)(stream.Length >> 8), (byte)(stream.Length & 0xFF));
                break;
        }

        for (var change = random.Next(6); change > 0 && stream.Length > 4; change--)
            stream[random.Next(4, stream.Length)] = (byte)random.Next(256);
        return [.. stream, .. samples[random.Next(samples.Length)]];
    }

    private static byte[][] Samples() =>
        [.. RandomPdus.All.Array[500].Single(_ => true, "0000KeFoSJm1").Select(RandomPdus.Written)];
}
