using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Use;

/// <summary>Whether a heap was hot for long enough to kill germs and weed seeds. Never a certificate.</summary>
public enum Hygiene
{
    /// <summary>Nobody can say.</summary>
    Unknown,

    /// <summary>It was not: use as raw manure.</summary>
    Unlikely,

    /// <summary>It was for a while: fewer germs, but use as raw manure.</summary>
    Partly,

    /// <summary>It likely was.</summary>
    Likely,
}

/// <summary>Heat felt on one day.</summary>
/// <param name="Day">Days after building.</param>
/// <param name="Heat">As felt.</param>
public readonly record struct HeatOnDay(int Day, Heat Heat);

/// <summary>What is known of the heat of a heap.</summary>
public sealed record HygieneEvidence
{
    /// <summary>Heat as felt, in any order.</summary>
    public IReadOnlyList<HeatOnDay> Checks { get; init; } = [];

    /// <summary>Days on which it was turned. [d after building]</summary>
    public IReadOnlyList<int> TurnDays { get; init; } = [];

    /// <summary>What the heat was felt with; null is taken as wood.</summary>
    public RodKind? Rod { get; init; }

    /// <summary>Days at 55 degrees or more that a forecast gives; null without. [d]</summary>
    public double? ForecastDaysAbove55 { get; init; }
}

/// <summary>A judgement with what it counted, for saying it in a farmer's words.</summary>
/// <param name="Verdict">The judgement.</param>
/// <param name="HotDays">Days counted as hot. [d]</param>
/// <param name="Turnings">Turnings while it was hot.</param>
public readonly record struct HygieneResult(Hygiene Verdict, int HotDays, int Turnings);
