using System.Buffers;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>What was taken out of a stream: a PDU, or the fault of one that could not be read.</summary>
internal readonly record struct PduReading(Pdu? Pdu, PduFaultException? Fault)
{
    /// <summary>The next; null when more octets are needed.</summary>
    /// <exception cref="PduFaultException">The stream cannot be trusted any more.</exception>
    public static PduReading? Next(ref ReadOnlySequence<byte> buffer)
    {
        try
        {
            return PduReader.TryRead(ref buffer, PduReader.UsualMostBytes, out var pdu)
                ? new PduReading(pdu, null)
                : null;
        }
        catch (PduFaultException fault) when (!fault.IsFatal)
        {
            return new PduReading(null, fault);
        }
    }
}
