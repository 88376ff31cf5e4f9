namespace HeapText.Store;

/// <summary>How long a caller waits for a step of either home before it is told that the store is
/// unavailable.</summary>
internal static class StepLimit
{
    public static readonly TimeSpan Time = TimeSpan.FromSeconds(4);
}
