namespace HeapText.Carriers.Smpp.Wire;

/// <summary>A PDU that cannot be read.</summary>
/// <param name="message">What is wrong, without any of the PDU's contents.</param>
internal sealed class PduFaultException(string message) : Exception(message)
{
    /// <summary>True when the stream cannot be trusted any more and must be closed; false when the PDU was taken out of
    /// the buffer, so that reading goes on with the next.</summary>
    public bool IsFatal { get; init; }

    /// <summary>The PDU's number; 0 when the fault is fatal.</summary>
    public CommandId CommandId { get; init; }

    /// <summary>The PDU's sequence; 0 when the fault is fatal.</summary>
    public uint Sequence { get; init; }

    /// <summary>What to answer with, when the PDU was a request.</summary>
    public CommandStatus Status { get; init; }

    /// <summary>True when the PDU was a response, which is never answered.</summary>
    public bool IsResponse => ((uint)CommandId & 0x80000000) != 0;
}
