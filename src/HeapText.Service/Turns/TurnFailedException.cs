namespace HeapText.Service.Turns;

/// <summary>No answer to a text could be worked out. What went wrong is logged where it happened, without the
/// text.</summary>
internal sealed class TurnFailedException() : Exception("No answer to a text could be worked out.");
