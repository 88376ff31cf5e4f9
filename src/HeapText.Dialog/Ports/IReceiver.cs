namespace HeapText.Dialog.Ports;

/// <summary>Where lines hand in what comes from phones and gateways. Each member completes only when the effect is
/// durable.</summary>
/// <remarks>Every member throws <see cref="StoreUnavailableException"/> when nothing could be promised: the gateway may
/// send it again.</remarks>
public interface IReceiver
{
    /// <summary>Takes a text; true when it had its effect before.</summary>
    /// <exception cref="TurnFailedException">No answer could be worked out; the gateway may send it again.</exception>
    Task<bool> Hear(Inbound message, CancellationToken cancel);

    /// <summary>Takes a step on a dialled screen; what it shows, and whether it had its effect before.</summary>
    /// <exception cref="TurnFailedException">No answer could be worked out; the trainer is told.</exception>
    Task<(Screen Screen, bool Duplicate)> Dial(Dialled step, CancellationToken cancel);

    /// <summary>Takes a missed call: the farmer is texted the open question, or how to join; true when it had its
    /// effect before.</summary>
    /// <exception cref="TurnFailedException">No answer could be worked out; the gateway may send it again.</exception>
    Task<bool> Ring(MissedCall call, CancellationToken cancel);

    /// <summary>Takes a receipt.</summary>
    Task<NoteOutcome> Note(Receipt receipt, CancellationToken cancel);
}

/// <summary>No answer could be worked out. What went wrong is logged where it happened, without the text.</summary>
public sealed class TurnFailedException() : Exception("No answer could be worked out.");
