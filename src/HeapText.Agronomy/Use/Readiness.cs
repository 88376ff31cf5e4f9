using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Use;

/// <summary>How ready a heap is.</summary>
public enum ReadinessVerdict
{
    /// <summary>A sign speaks against it.</summary>
    NotYet,

    /// <summary>A sign is missing: nobody can say.</summary>
    TestFirst,

    /// <summary>All signs are good; no sprout test was made.</summary>
    LikelyReady,

    /// <summary>All signs are good and seeds grow well in it.</summary>
    Ready,
}

/// <summary>What to do next about it.</summary>
public enum ReadinessStep
{
    /// <summary>Nothing: use it.</summary>
    None,

    /// <summary>It warmed again: turn it once more, wet dry parts.</summary>
    TurnAgain,

    /// <summary>It was turned too lately: feel it again later.</summary>
    WaitForReheat,

    /// <summary>Feel the heat some days after turning.</summary>
    FeelHeat,

    /// <summary>Put the smell right.</summary>
    PutSmellRight,

    /// <summary>Smell it.</summary>
    SmellIt,

    /// <summary>Let it rest longer, covered and a little moist.</summary>
    RestLonger,

    /// <summary>Look at it: dark, crumbly, nothing to be recognised.</summary>
    LookAtIt,

    /// <summary>Sow seeds in it and count.</summary>
    SowTest,

    /// <summary>Sow again with more, or better, seed.</summary>
    SowAgain,
}

/// <summary>What is known of a heap that may be ready; null where nobody has said.</summary>
public sealed record ReadinessSigns
{
    /// <summary>Heat felt inside.</summary>
    public Heat? Heat { get; init; }

    /// <summary>Days from the last turning to the day the heat was felt. [d]</summary>
    public int? DaysSinceTurn { get; init; }

    /// <summary>Smell as it is opened.</summary>
    public Smell? Smell { get; init; }

    /// <summary>Whether it is dark and crumbly and nothing can be recognised.</summary>
    public bool? LooksDone { get; init; }

    /// <summary>Days it has cured since its heat was over. [d]</summary>
    public int? DaysCured { get; init; }

    /// <summary>Days it is to cure. [d]</summary>
    public int DaysToCure { get; init; } = HeapMethods.Usual.CuringDays;

    /// <summary>What a sprout test said.</summary>
    public SproutVerdict? Sprout { get; init; }
}

/// <summary>Whether a heap is ready, and what to do next; every set of signs has one answer.</summary>
/// <param name="Verdict">How ready.</param>
/// <param name="Step">What to do.</param>
/// <remarks>
/// Sources, keyed in docs/agronomy/sources.md. Heat: a turned and wetted heap that does not warm again within 5 to 7
/// days is past its hot time [REHEAT], from memory. Smell: ammonia is too much nitrogen, from memory; rotten no air
/// [TOFG], read; sour early lack of air, from memory. Look: dark, crumbly, earthy is a sign, no proof alone [FINISH],
/// read. Curing: common practice, no source. Seeds: see <see cref="SproutTest"/>.
/// </remarks>
public readonly record struct Readiness(ReadinessVerdict Verdict, ReadinessStep Step)
{
    /// <summary>Days after turning from which a cool heap counts as past its heat. [d] [REHEAT], from memory.</summary>
    public const int ReheatDays = 5;

    /// <summary>Judges a heap: what speaks against it first, then what is missing.</summary>
    public static Readiness Of(ReadinessSigns signs)
    {
        ArgumentNullException.ThrowIfNull(signs);
        return Against(signs) is { } step ? new(ReadinessVerdict.NotYet, step)
            : Missing(signs) is { } wanted ? new(ReadinessVerdict.TestFirst, wanted)
            : signs.Sprout is SproutVerdict.Mature or SproutVerdict.VeryMature ? new(ReadinessVerdict.Ready, default)
            : new(ReadinessVerdict.LikelyReady, SeedStep(signs.Sprout));
    }

    private static ReadinessStep? Against(ReadinessSigns signs) => signs switch
    {
        { Heat: Heat.Hot or Heat.Warm } => ReadinessStep.TurnAgain,
        { Smell: Smell.Ammonia or Smell.Rotten or Smell.Sour } => ReadinessStep.PutSmellRight,
        { Sprout: SproutVerdict.Immature } or { LooksDone: false } => ReadinessStep.RestLonger,
        { DaysCured: { } days } when days < signs.DaysToCure => ReadinessStep.RestLonger,
        { Heat: not null, DaysSinceTurn: < ReheatDays } => ReadinessStep.WaitForReheat,
        _ => null,
    };

    private static ReadinessStep? Missing(ReadinessSigns signs) => signs switch
    {
        { Heat: null } or { DaysSinceTurn: null } => ReadinessStep.FeelHeat,
        { Smell: null } => ReadinessStep.SmellIt,
        { LooksDone: null } => ReadinessStep.LookAtIt,
        { DaysCured: null, Sprout: not (SproutVerdict.Mature or SproutVerdict.VeryMature) } => SeedStep(signs.Sprout),
        _ => null,
    };

    private static ReadinessStep SeedStep(SproutVerdict? sprout) =>
        sprout is null ? ReadinessStep.SowTest : ReadinessStep.SowAgain;
}
