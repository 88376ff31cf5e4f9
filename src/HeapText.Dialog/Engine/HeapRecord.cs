using System.Runtime.Serialization;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>One heap, from its recipe to ready compost.</summary>
/// <remarks>The order numbers are the stored format: never reuse or change one; add new ones at the end.</remarks>
[DataContract]
public sealed record HeapRecord
{
    /// <summary>Number on this phone, from 1.</summary>
    [DataMember(Order = 0)] public required int Number { get; init; }

    /// <summary>What was on hand when it was planned.</summary>
    [DataMember(Order = 1)] public required IReadOnlyList<Portion> Stock { get; init; }

    /// <summary>The recipe as it was sent.</summary>
    [DataMember(Order = 2)] public required HeapPlan Plan { get; init; }

    /// <summary>Where it stands.</summary>
    [DataMember(Order = 3)] public required HeapStep Step { get; init; }

    /// <summary>The day of what comes next in this step: a question, a turning; null when nothing comes.</summary>
    [DataMember(Order = 4)] public LocalDate? Due { get; init; }

    /// <summary>How often the farmer was reminded of what is due.</summary>
    [DataMember(Order = 5)] public int Prompts { get; init; }

    /// <summary>The day of the last reminder of what is due.</summary>
    [DataMember(Order = 6)] public LocalDate? PromptedOn { get; init; }

    /// <summary>The day it was built; null before.</summary>
    [DataMember(Order = 7)] public LocalDate? BuiltOn { get; init; }

    /// <summary>Days of the planned turnings that were done.</summary>
    [DataMember(Order = 8)] public IReadOnlyList<LocalDate> TurnedOn { get; init; } = [];

    /// <summary>The last check; null before the first.</summary>
    [DataMember(Order = 9)] public HeapCheck? Check { get; init; }

    /// <summary>Key of the method it is turned by.</summary>
    [DataMember(Order = 10)] public string Method { get; init; } = HeapMethods.UsualKey;

    /// <summary>The last day on which it was turned, planned or not; null before the first turning.</summary>
    [DataMember(Order = 11)] public LocalDate? LastTurned { get; init; }

    /// <summary>True once the farmer found it hot.</summary>
    [DataMember(Order = 12)] public bool WasHot { get; init; }

    /// <summary>Checks before the last one, oldest first; only so many are kept.</summary>
    [DataMember(Order = 13)] public IReadOnlyList<HeapCheck> EarlierChecks { get; init; } = [];

    /// <summary>A day for a check without a turning; null for none.</summary>
    [DataMember(Order = 14)] public LocalDate? CheckOn { get; init; }

    /// <summary>The last advice given, oldest first.</summary>
    [DataMember(Order = 15)] public IReadOnlyList<HeapAdvised> Advised { get; init; } = [];

    /// <summary>All checks that are kept, oldest first.</summary>
    public IEnumerable<HeapCheck> Checks => Check is { } last ? EarlierChecks.Append(last) : EarlierChecks;

    /// <summary>True when it is likely ready.</summary>
    public bool IsRipe => Step is HeapStep.Ready or HeapStep.Sprouting;

    /// <summary>True while it needs the farmer: it stands and is not ready or given up.</summary>
    public bool IsTended => !IsRipe && Step is not (HeapStep.Planned or HeapStep.GivenUp);

    /// <summary>Moves to a step, with what comes next on a day; reminders start anew.</summary>
    public HeapRecord To(HeapStep step, LocalDate? due) =>
        this with { Step = step, Due = due, Prompts = 0, PromptedOn = null };
}

/// <summary>Where a heap stands.</summary>
public enum HeapStep
{
    /// <summary>The recipe was sent; it does not stand yet.</summary>
    Planned,

    /// <summary>Planned turnings are under way.</summary>
    Turning,

    /// <summary>It warmed again after the last planned turning and needs one more.</summary>
    ExtraTurning,

    /// <summary>Turnings are done; whether it warms again is not known yet.</summary>
    Settling,

    /// <summary>The hot time is over; it rests.</summary>
    Curing,

    /// <summary>Likely ready.</summary>
    Ready,

    /// <summary>Reminders have ended without an answer.</summary>
    GivenUp,

    /// <summary>Likely ready; seeds may be growing in it as a test.</summary>
    Sprouting,
}

/// <summary>What was felt, smelt and squeezed on one day; null where not told.</summary>
[DataContract]
public sealed record HeapCheck
{
    [DataMember(Order = 0)] public required LocalDate On { get; init; }

    [DataMember(Order = 1)] public Heat? Heat { get; init; }

    [DataMember(Order = 2)] public Smell? Smell { get; init; }

    [DataMember(Order = 3)] public Moisture? Moisture { get; init; }

    [DataMember(Order = 4)] public Pests? Pests { get; init; }
}

/// <summary>Advice given on one day.</summary>
[DataContract]
public sealed record HeapAdvised
{
    [DataMember(Order = 0)] public required LocalDate On { get; init; }

    /// <summary>Keys of the actions asked for.</summary>
    [DataMember(Order = 1)] public required IReadOnlyList<string> Actions { get; init; }
}

/// <summary>A recipe as the farmer carries it in the head: the same amounts each round.</summary>
[DataContract]
public sealed record HeapPlan
{
    [DataMember(Order = 0)] public required int Rounds { get; init; }

    /// <summary>Amounts in one round, in layer order from the base up.</summary>
    [DataMember(Order = 1)] public required IReadOnlyList<Portion> PerRound { get; init; }

    /// <summary>Water for one round, in halves of a 20-litre bucket.</summary>
    [DataMember(Order = 2)] public required decimal WaterBucketsPerRound { get; init; }

    /// <summary>Base and height. [m]</summary>
    [DataMember(Order = 3)] public required double Width { get; init; }

    [DataMember(Order = 4)] public required double Length { get; init; }

    [DataMember(Order = 5)] public required double Height { get; init; }

    /// <summary>Keys of the cautions that this recipe needs.</summary>
    [DataMember(Order = 6)] public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Keys of materials of which nothing goes in.</summary>
    [DataMember(Order = 7)] public IReadOnlyList<string> LeftOver { get; init; } = [];

    /// <summary>Whether manure goes in, whose germs only long heat kills.</summary>
    public bool HoldsManure => PerRound.Any(portion =>
        MaterialTable.TryFind(portion.Material, out var material) && material.Role == MaterialRole.Manure);
}

/// <summary>What a text said of a heap, kept while it is being asked which heap was meant.</summary>
[DataContract]
public sealed record HeapReport
{
    [DataMember(Order = 0)] public required IReadOnlyList<int> Heaps { get; init; }

    [DataMember(Order = 1)] public bool Turned { get; init; }

    [DataMember(Order = 2)] public bool Delayed { get; init; }

    [DataMember(Order = 3)] public int DaysAgo { get; init; }

    [DataMember(Order = 4)] public Heat? Heat { get; init; }

    [DataMember(Order = 5)] public Smell? Smell { get; init; }

    [DataMember(Order = 6)] public Moisture? Moisture { get; init; }

    [DataMember(Order = 7)] public Pests? Pests { get; init; }

    /// <summary>This and a further report on the same heap; the later goes first.</summary>
    public HeapReport And(HeapReport later) => this with
    {
        Turned = Turned || later.Turned,
        Delayed = later.Delayed || (Delayed && !later.Turned),
        DaysAgo = Math.Max(DaysAgo, later.DaysAgo),
        Heat = later.Heat ?? Heat,
        Smell = later.Smell ?? Smell,
        Moisture = later.Moisture ?? Moisture,
        Pests = later.Pests ?? Pests,
    };

    /// <summary>True when something was felt, smelt, squeezed or seen.</summary>
    public bool HasCheck => Heat is not null || Smell is not null || Moisture is not null || Pests is not null;
}
