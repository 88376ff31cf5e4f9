using System.Buffers;
using CsCheck;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class PduRoundTripTests
{
    [Fact]
    public void ReadAfterWrite_AnyPdu_GivesTheSameFields() => RandomPdus.All.Sample(pdu =>
    {
        var buffer = new ReadOnlySequence<byte>(RandomPdus.Written(pdu));

        Assert.True(PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var read));

        Assert.True(buffer.IsEmpty);
        Assert.Equivalent(Comparable(pdu), Comparable(read!), strict: true);
    }, iter: 2_000);

    [Fact]
    public void TryRead_StreamCutAnywhere_GivesEveryPduOnceItIsWhole() =>
        Gen.Select(RandomPdus.All.Array[1, 4], Gen.Int[1, 40]).Sample((pdus, step) =>
        {
            var stream = pdus.SelectMany(RandomPdus.Written).ToArray();
            var read = new List<Pdu>();
            var consumed = 0;
            for (var arrived = 0; arrived <= stream.Length; arrived += step)
                consumed += ReadAll(stream.AsMemory(consumed..arrived), step, read);
            ReadAll(stream.AsMemory(consumed..), step, read);

            Assert.Equal(stream, read.SelectMany(RandomPdus.Written));
        }, iter: 500);

    private static int ReadAll(ReadOnlyMemory<byte> arrived, int piece, List<Pdu> read)
    {
        var buffer = Pieces.Of(arrived, piece);
        while (PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var pdu)) read.Add(pdu!);
        return arrived.Length - (int)buffer.Length;
    }

    // Memory compares by address; arrays and lists by what they hold.
    private static object Comparable(Pdu pdu) => pdu switch
    {
        Pdu.SubmitSm submit => (submit.Sequence, "submit", Comparable(submit.Body)),
        Pdu.DeliverSm deliver => (deliver.Sequence, "deliver", Comparable(deliver.Body)),
        Pdu.BindResp bound => (bound.Sequence, bound.Status, bound.Mode, bound.SystemId, Comparable(bound.Tlvs)),
        Pdu.Unknown other => (other.Sequence, other.Status, other.Number, Convert.ToHexString(other.Octets.Span)),
        _ => pdu,
    };

    private static object Comparable(MessageBody body) => (
        body with { ShortMessage = default, Tlvs = Tlvs.None },
        Convert.ToHexString(body.ShortMessage.Span), Comparable(body.Tlvs));

    private static string Comparable(Tlvs tlvs) =>
        string.Join(' ', tlvs.All.Select(one => $"{(ushort)one.Tag:X4}={Convert.ToHexString(one.Value.Span)}"));
}
