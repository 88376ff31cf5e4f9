namespace HeapText.Agronomy.Heap;

/// <summary>What is known of a heap; null where it was not told.</summary>
public sealed record DiagnosisInput
{
    /// <summary>As felt on the rod.</summary>
    public Heat? Heat { get; init; }

    /// <summary>As smelt when opened.</summary>
    public Smell? Smell { get; init; }

    /// <summary>As squeezed.</summary>
    public Moisture? Moisture { get; init; }

    /// <summary>Animals seen.</summary>
    public Pests? Pests { get; init; }

    /// <summary>What the heat was felt with.</summary>
    public RodKind? Rod { get; init; }

    /// <summary>Where it stands between building and ready.</summary>
    public HeapPhase? Phase { get; init; }

    /// <summary>What holds it together.</summary>
    public HeapForm Form { get; init; }

    /// <summary>Since the last turning, 0 or more. [d]</summary>
    public int? DaysSinceTurn { get; init; }

    /// <summary>True when a planned turning falls today or was missed: it is then asked for even the day after
    /// another.</summary>
    public bool IsTurnDue { get; init; }

    /// <summary>What cannot wait.</summary>
    public IReadOnlyCollection<UrgentSign> Signs { get; init; } = [];

    /// <summary>What earlier diagnoses asked for and the farmer did, as far as known. Routine turnings count in
    /// <see cref="DaysSinceTurn"/> alone.</summary>
    public IReadOnlyCollection<LastAction> LastActions { get; init; } = [];

    /// <summary>A heap known by its calendar, without its checks.</summary>
    /// <param name="method">How it is turned.</param>
    /// <param name="ageDays">Since building, 0 or more. [d]</param>
    /// <param name="daysSinceTurn">Since the last turning, 0 or more. [d]</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of days is negative.</exception>
    public static DiagnosisInput At(HeapMethod method, int? ageDays, int? daysSinceTurn) => new()
    {
        Phase = HeapPhases.Of(method, ageDays, daysSinceTurn),
        Form = method.Bounds.Form,
        DaysSinceTurn = daysSinceTurn,
        IsTurnDue = HeapPhases.IsTurnDue(method, ageDays, daysSinceTurn),
    };
}

/// <summary>An action that was done.</summary>
/// <param name="Key">One of <see cref="HeapActions.All"/>.</param>
/// <param name="DaysAgo">0 or more. [d]</param>
public sealed record LastAction(string Key, int DaysAgo);
