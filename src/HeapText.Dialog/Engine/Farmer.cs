using System.Runtime.Serialization;
using HeapText.Agronomy.Heap;
using HeapText.Dialog.Screens;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Everything known of one phone: who, where the talk stands, and its heaps. Stored as one packed
/// record.</summary>
/// <remarks>The order numbers are the stored format: never reuse or change one; add new ones at the end.</remarks>
[DataContract]
public sealed record Farmer
{
    /// <summary>Most heaps a phone may have at the same time.</summary>
    public const int MostHeaps = 3;

    /// <summary>Random id that stands for the farmer outside the store.</summary>
    [DataMember(Order = 0)] public required string Subject { get; init; }

    /// <summary>Something for a person to look at; null when nothing is open.</summary>
    [DataMember(Order = 1)] public Concern? Concern { get; init; }

    /// <summary>Code of the joined group; null before joining.</summary>
    [DataMember(Order = 2)] public int? Group { get; init; }

    /// <summary>The line the farmer writes on, and is written to.</summary>
    [DataMember(Order = 3)] public required string Line { get; init; }

    /// <summary>Language the farmer is written to in, by its two-letter code.</summary>
    [DataMember(Order = 4)] public string Language { get; init; } = "en";

    /// <summary>When the farmer agreed to be written to; null before.</summary>
    [DataMember(Order = 5)] public Instant? ConsentAt { get; init; }

    /// <summary>Which question is open.</summary>
    [DataMember(Order = 6)] public Stage Stage { get; init; }

    /// <summary>True from STOP until START.</summary>
    [DataMember(Order = 7)] public bool Stopped { get; init; }

    /// <summary>Hour of the day for reminders, in the farmer's zone; null until asked.</summary>
    [DataMember(Order = 8)] public int? Hour { get; init; }

    /// <summary>Time zone by its tz database name.</summary>
    [DataMember(Order = 9)] public string Zone { get; init; } = "UTC";

    /// <summary>What the farmer's rod is made of; null until asked.</summary>
    [DataMember(Order = 10)] public Rod? Rod { get; init; }

    /// <summary>Heaps under way, by number.</summary>
    [DataMember(Order = 11)] public IReadOnlyList<HeapRecord> Heaps { get; init; } = [];

    /// <summary>Number of the heap the open question is about; 0 for none.</summary>
    [DataMember(Order = 12)] public int TalkOf { get; init; }

    /// <summary>How many texts in a row were not understood.</summary>
    [DataMember(Order = 13)] public int Misreadings { get; init; }

    /// <summary>Stock being taken; null when none is.</summary>
    [DataMember(Order = 14)] public StockDraft? Draft { get; init; }

    /// <summary>How many messages were ever made for this phone; numbers the next.</summary>
    [DataMember(Order = 15)] public long MessagesMade { get; init; }

    /// <summary>When a phone that has not joined, or has stopped, was last answered.</summary>
    [DataMember(Order = 16)] public Instant? LastTurnedAway { get; init; }

    /// <summary>When the open question was asked.</summary>
    [DataMember(Order = 17)] public Instant? AskedAt { get; init; }

    /// <summary>What was said of a heap while it is being asked which heap was meant.</summary>
    [DataMember(Order = 18)] public HeapReport? Report { get; init; }

    /// <summary>How many heaps were ever planned on this phone; numbers the next.</summary>
    [DataMember(Order = 19)] public int HeapsPlanned { get; init; }

    /// <summary>The group whose code was texted, until consent is given or refused.</summary>
    [DataMember(Order = 20)] public int? InvitedTo { get; init; }

    /// <summary>True once the farmer asked to be written to in this language.</summary>
    [DataMember(Order = 21)] public bool LanguageChosen { get; init; }

    /// <summary>A question beside the heap, on crops, methods, hour or rod, while it is being asked; else
    /// null.</summary>
    [DataMember(Order = 22)] public SideTalk? Side { get; init; }

    /// <summary>Key of the method this farmer was advised; null for that of the group.</summary>
    [DataMember(Order = 23)] public string? Method { get; init; }

    /// <summary>Words for things on hand that nobody knew, until the trainer has explained them.</summary>
    [DataMember(Order = 24)] public IReadOnlyList<UnknownWord> UnknownWords { get; init; } = [];

    /// <summary>The last session on a dialled screen; null when it is long over.</summary>
    [DataMember(Order = 25)] public ScreenTalk? Screen { get; init; }

    /// <summary>The last answers by text, to notice when they go round in a circle; null before the first.</summary>
    [DataMember(Order = 26)] public LastAnswers? LastAnswers { get; init; }
}

/// <summary>The last two answers by text, and how often one of them came again.</summary>
/// <param name="Newest">Hash of the newest.</param>
/// <param name="Before">Hash of the one before it.</param>
/// <param name="Repeats">How many answers in a row were one of the last two.</param>
/// <param name="Since">When the first of these answers was given.</param>
[DataContract]
public sealed record LastAnswers(
    [property: DataMember(Order = 0)] uint Newest,
    [property: DataMember(Order = 1)] uint Before,
    [property: DataMember(Order = 2)] int Repeats,
    [property: DataMember(Order = 3)] Instant Since);

/// <summary>What was told so far of how much compost to use, or of how to make a heap, and where to go
/// back to.</summary>
[DataContract]
public sealed record SideTalk
{
    /// <summary>The question that was open before, to go back to.</summary>
    [DataMember(Order = 0)] public Stage Before { get; init; }

    /// <summary>The heap that question is about.</summary>
    [DataMember(Order = 1)] public int TalkOf { get; init; }

    /// <summary>Key of the crop; null before.</summary>
    [DataMember(Order = 2)] public string? Crop { get; init; }

    /// <summary>Length of the land in steps; 0 before.</summary>
    [DataMember(Order = 3)] public int Length { get; init; }

    [DataMember(Order = 4)] public Rain? Rain { get; init; }

    [DataMember(Order = 5)] public Water? Water { get; init; }
}

/// <summary>A word for something on hand that nobody knew.</summary>
/// <param name="Word">As <see cref="Ports.OwnWord.Plain"/> gives it.</param>
/// <param name="Amount">As told; null when not said.</param>
/// <param name="Measure">As told; null when not said.</param>
/// <param name="HeapsPlanned">How many heaps had been planned on the phone: tells the stock it belongs to.</param>
[DataContract]
public sealed record UnknownWord(
    [property: DataMember(Order = 0)] string Word,
    [property: DataMember(Order = 1)] decimal? Amount,
    [property: DataMember(Order = 2)] string? Measure,
    [property: DataMember(Order = 3)] int HeapsPlanned);

/// <summary>What a rod is made of: decides what its warmth can tell, and how it can burn.</summary>
public enum Rod
{
    Wood,
    Metal,
}

/// <summary>Why a farmer waits for a person.</summary>
[DataContract]
public sealed record Concern
{
    /// <summary>The most pressing reason.</summary>
    [DataMember(Order = 0)] public required ConcernReason Reason { get; init; }

    /// <summary>Since when.</summary>
    [DataMember(Order = 1)] public required Instant Since { get; init; }

    /// <summary>Further reasons, most pressing first.</summary>
    [DataMember(Order = 2)] public IReadOnlyList<ConcernReason> Others { get; init; } = [];

    /// <summary>The same concern with one more reason.</summary>
    public Concern And(ConcernReason reason)
    {
        var all = Others.Append(Reason).Append(reason).Distinct().Order().ToList();
        return this with { Reason = all[0], Others = all[1..] };
    }

    /// <summary>The same concern with one reason less; null when none is left.</summary>
    public Concern? Without(ConcernReason reason)
    {
        var left = Others.Prepend(Reason).Where(r => r != reason).ToList();
        return left.Count == 0 ? null : this with { Reason = left[0], Others = left[1..] };
    }
}

/// <summary>Reasons for a person to look, most pressing first.</summary>
public enum ConcernReason
{
    /// <summary>Burn, smoke, fire, poison or a sick person.</summary>
    Urgent,

    /// <summary>The farmer asked for a person.</summary>
    Person,

    /// <summary>The farmer asked to have the data deleted.</summary>
    Erase,

    /// <summary>Two texts in a row were not understood.</summary>
    Misread,

    /// <summary>A heap stays unturned and reminders have ended.</summary>
    Overdue,

    /// <summary>The farmer asked how much compost a crop needs. Stands in older records only: it is answered
    /// now.</summary>
    Use,

    /// <summary>A text or reminder could not be worked out by the service.</summary>
    ServiceFault,

    /// <summary>A fault of a heap came back although the advice was followed.</summary>
    Trouble,

    /// <summary>The farmer has something by a word that nobody knew; see <see cref="Farmer.UnknownWords"/>.</summary>
    UnknownWord,
}
