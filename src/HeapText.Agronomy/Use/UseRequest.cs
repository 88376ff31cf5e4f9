namespace HeapText.Agronomy.Use;

/// <summary>How far the compost has come.</summary>
public enum CompostState
{
    /// <summary>Heated, cooled, cured: see <see cref="Readiness"/>.</summary>
    Ready,

    /// <summary>Still warming again, smelling, or with stalks to be seen.</summary>
    Unfinished,

    /// <summary>Manure or plants that were never composted.</summary>
    Raw,
}

/// <summary>What is to be given compost, and what is known of the compost.</summary>
public sealed record UseRequest
{
    /// <summary>Key of the crop, as in crops.csv.</summary>
    public required string Crop { get; init; }

    /// <summary>Ground to cover; either this or <see cref="Plants"/>. [m2]</summary>
    public double? AreaM2 { get; init; }

    /// <summary>Plants, holes or pots; a whole number.</summary>
    public double? Plants { get; init; }

    /// <summary>Compost there is, as it lies; null to count on what is needed. [kg]</summary>
    public double? CompostKg { get; init; }

    /// <summary>Water of fresh mass; null for <see cref="ReadyCompost.Moisture"/>. [%, wet]</summary>
    public double? MoisturePercent { get; init; }

    /// <summary>Nitrogen of dry matter, from a laboratory; null for <see cref="ReadyCompost.Nitrogen"/>. [%, 0 to
    /// <see cref="ReadyCompost.MostNitrogenPercent"/>]</summary>
    public double? NitrogenPercent { get; init; }

    /// <summary>Price of a kilogram, by key of the fertiliser; may be empty. [local money/kg]</summary>
    public IReadOnlyDictionary<string, double> Prices { get; init; } = new Dictionary<string, double>();

    /// <summary>How far the compost has come.</summary>
    public CompostState State { get; init; } = CompostState.Ready;

    /// <summary>Whether the heap was hot for long enough, by <see cref="HygieneRule"/>.</summary>
    public Hygiene Hygiene { get; init; } = Hygiene.Unknown;

    /// <summary>The first fault of this request, by its field in the command line's JSON; or null.</summary>
    public InputFault? Check() =>
        !CropTable.TryFind(Crop, out _) ? new InputFault("crop", $"is no known crop: use one of {CropTable.Keys}")
        : AreaM2 is null && Plants is null ? new InputFault("areaM2", "must be given, or plants")
        : AreaM2 is not null && Plants is not null ? new InputFault("plants", "must not be given beside areaM2")
        : OfExtent("areaM2", AreaM2) ?? OfExtent("plants", Plants) ?? OfWhole("plants", Plants)
            ?? (CompostKg is { } kg ? InputFault.OfAmount("compostKg", kg) : null)
            ?? InputFault.OfPercent("moisturePercent", MoisturePercent) ?? OfNitrogen()
            ?? FertiliserTable.Check(Prices)?.Within("prices");

    private static InputFault? OfExtent(string field, double? extent) => extent switch
    {
        null => null,
        0 => new InputFault(field, "must be more than 0"),
        _ => InputFault.OfAmount(field, extent.Value),
    };

    private static InputFault? OfWhole(string field, double? count) =>
        count is null || count.Value == Math.Floor(count.Value)
            ? null
            : new InputFault(field, "must be a whole number");

    private InputFault? OfNitrogen() => NitrogenPercent is null or (>= 0 and <= ReadyCompost.MostNitrogenPercent)
        ? null
        : new InputFault("nitrogenPercent", "must be from 0 to 3, of dry matter: compost does not hold more");
}
