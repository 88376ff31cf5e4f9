namespace HeapText.Agronomy.Materials;

/// <summary>The one list of what to do with a refused material instead. Local rules go first.</summary>
public static class RefusalAdvice
{
    /// <summary>Use it again or give it to who collects it; never burn plastic. Wrap what cuts.</summary>
    public const string ReuseOrCollect = "reuse-or-collect";

    /// <summary>
    /// Keep it dry and away from children, and hand it in where such things are collected or sold; never open it, burn
    /// it or bury it.
    /// </summary>
    public const string HandIn = "hand-in";

    /// <summary>Use only a toilet or treatment made for it; ask the health officer.</summary>
    public const string SanitationSystem = "sanitation-system";

    /// <summary>
    /// Bury it half a metre deep or more, where dogs cannot dig, away from wells, streams and beds; wash hands.
    /// </summary>
    public const string BuryAwayFromWater = "bury-away-from-water";

    /// <summary>
    /// Do not open, eat or drag it; tell the livestock officer, above all after a sudden death. Where burying is
    /// allowed: 2 m of soil above it, far from wells, streams and flood water.
    /// </summary>
    public const string TellLivestockOfficer = "tell-livestock-officer";

    /// <summary>Use it again as timber or take it to the waste place; never burn it, not even to cook.</summary>
    public const string ReuseNeverBurn = "reuse-never-burn";

    /// <summary>
    /// Ask the officer what was sprayed. Until known, keep the plants, and dung of animals that ate them, off beds and
    /// heaps; try them on a few beans first.
    /// </summary>
    public const string AskOfficerKeepOffCrops = "ask-officer-keep-off-crops";

    /// <summary>
    /// Take it out of the field and chop and dry it; bury it deep, or burn it where local rules allow; then clean the
    /// tools.
    /// </summary>
    public const string TakeAwayBuryOrBurn = "take-away-bury-or-burn";

    /// <summary>
    /// Next time cut before it seeds. Dry what has seed on hard ground until dead, or keep it under water for weeks,
    /// and keep it off the field.
    /// </summary>
    public const string CutEarlyOrKillSeed = "cut-early-or-kill-seed";

    /// <summary>Let it go cold, damp it, and bury it in a dry place away from food crops, wells and streams.</summary>
    public const string BuryDryAwayFromCrops = "bury-dry-away-from-crops";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        ReuseOrCollect, HandIn, SanitationSystem, BuryAwayFromWater, TellLivestockOfficer, ReuseNeverBurn,
        AskOfficerKeepOffCrops, TakeAwayBuryOrBurn, CutEarlyOrKillSeed, BuryDryAwayFromCrops,
    ];
}
