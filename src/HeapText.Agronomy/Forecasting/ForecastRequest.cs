using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Forecasting;

/// <summary>A heap as built, what is planned for it, and what was felt so far.</summary>
public sealed record ForecastRequest
{
    /// <summary>What the heap is built of; their order does not matter.</summary>
    public required IReadOnlyList<ForecastPart> Parts { get; init; }

    /// <summary>Water poured on while building, 0 or more. [L]</summary>
    public double WaterLitres { get; init; }

    /// <summary>Volume as piled; null is the sum of the parts by their bulk densities, liquids aside. [L]</summary>
    public double? VolumeLitres { get; init; }

    /// <summary>How the heap stands, of which the proportions count; null is 1.5 m wide and 1.2 m high.</summary>
    public HeapDimensions? Dimensions { get; init; }

    /// <summary>Mean temperature of the air, -10 to 45. [C]</summary>
    public double AmbientC { get; init; } = 25;

    /// <summary>Days of turning, done and planned, 1 to 365 after building; the usual method's by default.</summary>
    public IReadOnlyList<int> TurnDays { get; init; } = HeapMethods.Usual.TurnDays;

    /// <summary>Days of curing once it is stable. [d]</summary>
    public int CuringDays { get; init; } = HeapMethods.Usual.CuringDays;

    /// <summary>Last day to tell of, 1 to 365. [d after building]</summary>
    public int Days { get; init; } = 90;

    /// <summary>What was felt, in any order.</summary>
    public IReadOnlyList<FieldCheck> Checks { get; init; } = [];

    /// <summary>What is done about water after building.</summary>
    public Watering Watering { get; init; } = Watering.WhenDry;

    /// <summary>Whether the volume rests on a density that was assumed, as nobody gave one.</summary>
    public bool AssumesDensity => VolumeLitres is null && Parts.Any(part => part.AssumesDensity);

    /// <summary>The first fault of this request, by its field in the command line's JSON; or null.</summary>
    public InputFault? Check() => CheckParts() ?? CheckHeap() ?? CheckDays();

    private InputFault? CheckParts()
    {
        if (Parts.Count == 0)
        {
            return new InputFault("parts", "must hold at least one part");
        }

        for (var i = 0; i < Parts.Count; i++)
        {
            if (Parts[i].Check() is { } fault)
            {
                return fault.Within($"parts[{i}]");
            }
        }

        return Parts.Sum(part => part.DryKg) > 0
            ? null
            : new InputFault("parts", "must hold more than 0 kg of dry matter together");
    }

    private InputFault? CheckHeap() =>
        InputFault.OfAmount("waterLitres", WaterLitres)
        ?? (VolumeLitres is null or (>= 1 and <= InputFault.LargestAmount)
            ? null : new InputFault("volumeLitres", "must be from 1 to 1000000"))
        ?? (Dimensions is not { } heap ? null
            : OfMetres("widthM", heap.WidthM) ?? OfMetres("lengthM", heap.LengthM) ?? OfMetres("heightM", heap.HeightM))
        ?? (AmbientC is >= -10 and <= 45 ? null : new InputFault("ambientC", "must be from -10 to 45"));

    private InputFault? CheckDays()
    {
        if (Days is < 1 or > Parameters.HorizonDays)
        {
            return new InputFault("days", "must be from 1 to 365");
        }

        for (var i = 0; i < TurnDays.Count; i++)
        {
            if (TurnDays[i] is < 1 or > Parameters.HorizonDays)
            {
                return new InputFault($"turnDays[{i}]", "must be from 1 to 365");
            }
        }

        for (var i = 0; i < Checks.Count; i++)
        {
            if (Checks[i].Day is < 0 or > Parameters.HorizonDays)
            {
                return new InputFault($"checks[{i}].day", "must be from 0 to 365");
            }
        }

        return null;
    }

    private static InputFault? OfMetres(string field, double metres) =>
        metres is >= 0.1 and <= 1000 ? null : new InputFault($"dimensions.{field}", "must be from 0.1 to 1000 metres");
}

/// <summary>Some of one material in a heap.</summary>
/// <param name="Material">Stable key; null when its figures are given.</param>
/// <param name="MassKg">Fresh mass, 0 or more. [kg]</param>
/// <param name="Given">Figures that override the table.</param>
public sealed record ForecastPart(string? Material, double MassKg, GivenFigures Given)
{
    /// <summary>Some of a material by the table's figures.</summary>
    public ForecastPart(string material, double massKg)
        : this(material, massKg, GivenFigures.None) { }

    internal Material? Known => MaterialTable.TryFind(Material, out var known) ? known : null;

    internal Composition Composition => Composition.Resolve(Known, Given).Composition!;

    internal double DryKg => MassKg * Composition.Moisture.Rest().Value;

    /// <summary>Space it fills as piled; 0 for liquids. [m3]</summary>
    internal double CubicMetres => Known?.Form == MaterialForm.Liquid ? 0 : MassKg / Density;

    /// <summary>Whether neither the table nor anybody says how heavily it lies.</summary>
    internal bool AssumesDensity => Known is null && Given.DensityKgPerM3 is null;

    private double Density => Given.DensityKgPerM3
        ?? Known?.Figures?.Density.KilogramsPerCubicMetre
        ?? Parameters.UsualDensity;

    internal InputFault? Check() =>
        Material is not null && Known is null ? new InputFault("material", "is no known material")
        : Known is { IsRefused: true } ? new InputFault("material", "never goes into a heap")
        : InputFault.OfAmount("massKg", MassKg)
            ?? Composition.Resolve(Known, Given).Fault;
}

/// <summary>What was felt on a day, before any turning of that day.</summary>
/// <param name="Day">0 to 365. [d after building]</param>
/// <param name="Heat">As felt, or null.</param>
/// <param name="Moisture">As squeezed, or null.</param>
/// <param name="Rod">What heat was felt on; null when not told.</param>
public sealed record FieldCheck(int Day, Heat? Heat, Moisture? Moisture, RodKind? Rod = null);

/// <summary>What is done about water after building.</summary>
public enum Watering
{
    /// <summary>A heap below 55 % is brought back to it when turned, and one below 45 %, dry to the hand, at a weekly
    /// check after the last turning: as farmers are told.</summary>
    WhenDry,

    /// <summary>None is added.</summary>
    Never,
}
