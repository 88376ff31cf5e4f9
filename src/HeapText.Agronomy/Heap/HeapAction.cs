namespace HeapText.Agronomy.Heap;

/// <summary>Something a farmer is asked to do.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Steps">The steps of work it holds.</param>
/// <param name="Otherwise">Key of what is asked instead when one of the steps was just done; null when it holds
/// none.</param>
public sealed record HeapAction(string Key, HeapSteps Steps, string? Otherwise)
{
    /// <summary>True when the heap is turned by it.</summary>
    public bool HasTurning => Steps.HasFlag(HeapSteps.Turn);

    /// <summary>True when it covers the heap.</summary>
    internal bool IsCover => Key is HeapActions.KeepRainOff or HeapActions.CoverSoil;

    /// <summary>True when it asks for no work on the heap.</summary>
    internal bool IsIdle => Key is HeapActions.KeepGoing or HeapActions.Wait or HeapActions.AskCheck
        or HeapActions.LookDeeper or HeapActions.LetCure or HeapActions.TestReady;
}
