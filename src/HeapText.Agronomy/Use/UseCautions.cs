namespace HeapText.Agronomy.Use;

/// <summary>The one list of caution keys for use; their words live with the dialogs.</summary>
/// <remarks>Sources, keyed in docs/agronomy/sources.md, stand in docs/agronomy/use.md beside each key.</remarks>
public static class UseCautions
{
    /// <summary>120 days from compost to harvest: the food touches soil. [RAWMANURE]</summary>
    public const string RawInterval120 = "raw-interval-120";

    /// <summary>90 days from compost to harvest: the food does not touch soil. [RAWMANURE]</summary>
    public const string RawInterval90 = "raw-interval-90";

    /// <summary>120 days, unless the heap was hot for long enough: nobody has said whether it was.</summary>
    public const string Interval120UnlessHot = "interval-120-unless-hot";

    /// <summary>90 days, unless the heap was hot for long enough: nobody has said whether it was.</summary>
    public const string Interval90UnlessHot = "interval-90-unless-hot";

    /// <summary>Not on food that is eaten raw.</summary>
    public const string NotOnSalad = "not-on-salad";

    /// <summary>Not in pots or seedbeds: what is not ripe hurts roots.</summary>
    public const string NotOnSeedlings = "not-on-seedlings";

    /// <summary>Work it into the soil, do not leave it on top.</summary>
    public const string MixIntoSoil = "mix-into-soil";

    /// <summary>Give it a month before sowing or planting: at first it holds nitrogen back.</summary>
    public const string ApplyMonthBeforeSowing = "apply-month-before-sowing";

    /// <summary>Wash hands with soap after work, cover wounds.</summary>
    public const string WashHands = "wash-hands";

    /// <summary>Gloves; wet what is dusty and cover mouth and nose.</summary>
    public const string WearGlovesDust = "wear-gloves-dust";

    /// <summary>Keep it away from wells and streams, out of running water.</summary>
    public const string KeepFromWater = "keep-from-water";

    /// <summary>Local rules come first.</summary>
    public const string LocalRules = "local-rules";

    /// <summary>The money counts what a compound's phosphate and potash cost too, so it is too high.</summary>
    public const string ValueOfCompound = "value-of-compound";

    /// <summary>All caution keys, in the order in which they are given.</summary>
    public static IReadOnlyList<string> Keys { get; } =
    [
        RawInterval120, RawInterval90, Interval120UnlessHot, Interval90UnlessHot, NotOnSalad, NotOnSeedlings,
        MixIntoSoil, ApplyMonthBeforeSowing, WashHands, WearGlovesDust, KeepFromWater, LocalRules, ValueOfCompound,
    ];

    /// <summary>Cautions for giving compost to a crop, in the order of <see cref="Keys"/>.</summary>
    /// <param name="crop">The crop.</param>
    /// <param name="state">How far the compost has come.</param>
    /// <param name="hygiene">Whether the heap was hot for long enough.</param>
    /// <param name="priced">The fertiliser whose price was used, or null.</param>
    internal static IReadOnlyList<string> For(Crop crop, CompostState state, Hygiene hygiene, Fertiliser? priced)
    {
        var unripe = state != CompostState.Ready;
        var asRaw = unripe || hygiene is Hygiene.Partly or Hygiene.Unlikely;
        var inDoubt = !asRaw && hygiene == Hygiene.Unknown;
        var touches = crop.Contact != FoodContact.None;
        HashSet<string?> given =
        [
            asRaw ? (touches ? RawInterval120 : RawInterval90) : null,
            inDoubt ? (touches ? Interval120UnlessHot : Interval90UnlessHot) : null,
            asRaw && crop.Contact == FoodContact.Raw ? NotOnSalad : null,
            unripe && crop.Basis == RateBasis.Mix ? NotOnSeedlings : null,
            asRaw ? MixIntoSoil : null,
            crop.BeforePlanting ? ApplyMonthBeforeSowing : null,
            WashHands,
            WearGlovesDust,
            KeepFromWater,
            LocalRules,
            priced is { IsCompound: true } ? ValueOfCompound : null,
        ];
        return [.. Keys.Where(given.Contains)];
    }
}
