using System.Buffers;
using CsCheck;
using HeapText.Carriers.Smpp.Wire;
using NodaTime;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class PduFuzzTests
{
    private const int Rounds = 200_000, Seed = 20260211, MostBytes = 4096;

    [Fact]
    public void TryRead_RandomAndMutatedOctets_FaultsOnlyAsPduFaultAndAlwaysGoesOn()
    {
        var random = new Random(Seed);
        var collector = new PartsCollector<int>(
            new PartsLimits { MostTexts = 20, MostParts = 100 }, Alphabet.Gsm7);
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
                    Look(pdu!, collector, round);
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

    // All that a line does with a PDU, so that none of it trusts what it finds.
    private static void Look(Pdu pdu, PartsCollector<int> collector, int round)
    {
        var body = pdu switch { Pdu.SubmitSm one => one.Body, Pdu.DeliverSm one => one.Body, _ => new MessageBody() };
        var tlvs = body.Tlvs;
        _ = (tlvs.ItsSessionInfo, tlvs.MessageState, tlvs.NetworkError, tlvs.ReceiptedMessageId, tlvs.SarPart,
            tlvs.SarReference, tlvs.SarTotal, tlvs.UserMessageReference, tlvs.UssdServiceOp, body.UserData.Length);
        var now = Instant.FromUnixTimeSeconds(round);
        _ = Receipt.Read(body, new MessageIds(MessageIdForm.Hex, MessageIdForm.Decimal), Alphabet.Gsm7);
        if (collector.Add(body, round, now) is Collected<int>.Given given)
            collector.Settle(given.Text, isDurable: round % 2 == 0, now);
        if (round % 100 == 0) collector.Sweep(now);
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
