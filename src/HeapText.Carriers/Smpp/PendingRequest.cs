using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>A request on its way to its answer.</summary>
/// <param name="sequence">Its sequence number.</param>
/// <param name="takesSlot">True when it counts against the window.</param>
/// <param name="answersBefore">How many of our own answers went before it: its answer proves that they arrived.</param>
internal sealed class PendingRequest(uint sequence, bool takesSlot, long answersBefore)
{
    private readonly TaskCompletionSource<Pdu?> _end = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public uint Sequence => sequence;

    public bool TakesSlot => takesSlot;

    public long AnswersBefore => answersBefore;

    /// <summary>True once nobody waits for it in time any more. Guarded by the window's lock.</summary>
    public bool IsLate { get; set; }

    /// <summary>The answer; null when the link was lost, or the answer unreadable, so that the outcome is
    /// unknown.</summary>
    public Task<Pdu?> End => _end.Task;

    public void Complete(Pdu? answer) => _end.TrySetResult(answer);
}
