namespace HeapText.Agronomy.Heap;

/// <summary>The one list of what a diagnosis may ask a farmer to do; the farmers' words live with the
/// dialogs.</summary>
public static class HeapActions
{
    /// <summary>All is well: carry on to the next planned day.</summary>
    public const string KeepGoing = "keep-going";

    /// <summary>Leave it closed and give it time until the next check.</summary>
    public const string Wait = "wait";

    /// <summary>Feel the heat, smell it and squeeze a handful, then tell.</summary>
    public const string AskCheck = "ask-check";

    /// <summary>Dig an arm deep in two places: feel, smell and squeeze there, see whether it is dark and
    /// crumbly.</summary>
    public const string LookDeeper = "look-deeper";

    /// <summary>Turn it today, outside to inside, loosely, breaking lumps.</summary>
    public const string Turn = "turn";

    /// <summary>Turn it today, sprinkling water until a handful gives a drop or two.</summary>
    public const string TurnWater = "turn-water";

    /// <summary>Water it without turning, slowly, into holes made with a stick.</summary>
    public const string AddWater = "add-water";

    /// <summary>Turn it today and mix in dry coarse stuff, to soak up water and let air in.</summary>
    public const string AddDry = "add-dry";

    /// <summary>Turn it today and mix in dry leaves, straw or stover, to bind the nitrogen.</summary>
    public const string AddBrown = "add-brown";

    /// <summary>Turn it today and mix in fresh green stuff or dung.</summary>
    public const string Feed = "feed";

    /// <summary>Pile more of the same mix on it, to a metre each way or more.</summary>
    public const string BuildUp = "build-up";

    /// <summary>Cover it with three fingers of soil.</summary>
    public const string CoverSoil = "cover-soil";

    /// <summary>Keep rain off with leaves, grass or a roof, sides open to the air.</summary>
    public const string KeepRainOff = "keep-rain-off";

    /// <summary>Dig the pit out, pile it loosely on the ground beside, and lead the water away.</summary>
    public const string Drain = "drain";

    /// <summary>With gloves take out food, meat and bones, and bring no more.</summary>
    public const string RemoveFood = "remove-food";

    /// <summary>Leave it covered and damp for its rest.</summary>
    public const string LetCure = "let-cure";

    /// <summary>When its rest is over, look, smell and try seeds in it.</summary>
    public const string TestReady = "test-ready";

    /// <summary>Urgent: people and animals stay away from it.</summary>
    public const string KeepAway = "keep-away";

    /// <summary>Urgent: do not open or turn it, air feeds the fire.</summary>
    public const string DoNotOpen = "do-not-open";

    /// <summary>Urgent: cool the burn under clean water for 20 minutes.</summary>
    public const string CoolBurn = "cool-burn";

    /// <summary>Urgent: go to a clinic at once.</summary>
    public const string GoToClinic = "go-to-clinic";

    /// <summary>Urgent: do not use or touch what is in the heap until the officer has seen it; whoever feels ill goes
    /// to a clinic.</summary>
    public const string DoNotUse = "do-not-use";

    /// <summary>Urgent: ring the officer now.</summary>
    public const string CallOfficer = "call-officer";

    /// <summary>All actions by key.</summary>
    public static IReadOnlyDictionary<string, HeapAction> All { get; } = new HeapAction[]
    {
        // key           steps it holds                        when a step of it was just done
        new(KeepGoing,   HeapSteps.None,                       null),
        new(Wait,        HeapSteps.None,                       null),
        new(AskCheck,    HeapSteps.None,                       null),
        new(LookDeeper,  HeapSteps.Look,                       Wait),
        new(Turn,        HeapSteps.Turn,                       Wait),
        new(TurnWater,   HeapSteps.Turn | HeapSteps.Water,     AddWater),
        new(AddWater,    HeapSteps.Water,                      LookDeeper),
        new(AddDry,      HeapSteps.Turn | HeapSteps.Dry,       KeepRainOff),
        new(AddBrown,    HeapSteps.Turn | HeapSteps.Brown,     CoverSoil),
        new(Feed,        HeapSteps.Turn | HeapSteps.Feed,      Wait),
        new(BuildUp,     HeapSteps.Size,                       Wait),
        new(CoverSoil,   HeapSteps.Soil,                       Wait),
        new(KeepRainOff, HeapSteps.Roof,                       Wait),
        new(Drain,       HeapSteps.Turn | HeapSteps.Drain,     KeepRainOff),
        new(RemoveFood,  HeapSteps.Food,                       CoverSoil),
        new(LetCure,     HeapSteps.None,                       null),
        new(TestReady,   HeapSteps.Test,                       LetCure),
        new(KeepAway,    HeapSteps.None,                       null),
        new(DoNotOpen,   HeapSteps.None,                       null),
        new(CoolBurn,    HeapSteps.None,                       null),
        new(GoToClinic,  HeapSteps.None,                       null),
        new(DoNotUse,    HeapSteps.None,                       null),
        new(CallOfficer, HeapSteps.None,                       null),
    }.ToDictionary(action => action.Key, StringComparer.Ordinal);

    /// <summary>Sets of actions of which no reply asks one from each side: wetting and drying, feeding and binding,
    /// working on a heap and leaving it alone.</summary>
    public static IReadOnlyList<(IReadOnlyList<string> One, IReadOnlyList<string> Other)> Contradictions { get; } =
    [
        ([AddWater, TurnWater], [AddDry, KeepRainOff, Drain]),
        ([Feed], [AddBrown, AddDry, Drain]),
        ([Wait, KeepGoing], [.. All.Keys.Except([Wait, KeepGoing])]),
        ([Wait], [KeepGoing]),
        ([Turn, TurnWater, AddDry, AddBrown, Feed, Drain, BuildUp], [LetCure, TestReady, DoNotOpen, KeepAway]),
        ([AskCheck, LookDeeper], [LetCure, TestReady, DoNotOpen, KeepAway]),
    ];

    /// <summary>True when one reply must not ask for both.</summary>
    public static bool Contradict(string one, string other) => Contradictions.Any(pair =>
        (pair.One.Contains(one) && pair.Other.Contains(other))
        || (pair.One.Contains(other) && pair.Other.Contains(one)));
}
