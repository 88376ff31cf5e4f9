using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Forecasting;

/// <summary>What to expect of a heap. Ranges, never a degree: no published model keeps within 5 C [MASON].</summary>
public sealed record Forecast
{
    /// <summary>Every day from 0 to the last asked for.</summary>
    public required IReadOnlyList<ForecastDay> Days { get; init; }

    /// <summary>Highest likely temperature of the core among the days. [C]</summary>
    public required double PeakC { get; init; }

    /// <summary>First day of that temperature. [d after building]</summary>
    public required int PeakDay { get; init; }

    /// <summary>How many of the days the core is likely at 55 C or more. [d]</summary>
    public required int DaysAbove55 { get; init; }

    /// <summary>When it is stable and has cured.</summary>
    public required ReadyDay ReadyDay { get; init; }

    /// <summary>Likely mass as it is when ready, or after a year when it is not by then. [kg]</summary>
    public required Mass Yield { get; init; }

    /// <summary>Likely volume then. [L]</summary>
    public required Volume YieldVolume { get; init; }

    /// <summary>Water to add at each turning that needs some, up to the last day asked for.</summary>
    public required IReadOnlyList<TurningWater> WaterAtTurnings { get; init; }
}

/// <summary>A heap at the same hour of a day as it was built, before any turning of that day.</summary>
/// <param name="Day">[d after building]</param>
/// <param name="CoreC">Likely temperature of the core. [C]</param>
/// <param name="CoreLowC">One heap in ten is cooler; at least 5 C below the likely. [C]</param>
/// <param name="CoreHighC">One heap in ten is hotter; at least 5 C above the likely. [C]</param>
/// <param name="MoisturePercent">Likely moisture of the whole heap, wet basis. [%]</param>
/// <param name="DryKg">Likely dry matter. [kg]</param>
/// <param name="VolumeLitres">Likely volume. [L]</param>
public sealed record ForecastDay(
    int Day,
    double CoreC,
    double CoreLowC,
    double CoreHighC,
    double MoisturePercent,
    double DryKg,
    double VolumeLitres);

/// <summary>Days after building on which compost is ready; null is not within a year.</summary>
/// <param name="Early">One heap in ten is ready by then. [d]</param>
/// <param name="Likely">Every second heap is. [d]</param>
/// <param name="Late">Nine heaps in ten are. [d]</param>
public sealed record ReadyDay(int? Early, int? Likely, int? Late);

/// <summary>Water to add at a turning.</summary>
/// <param name="Day">[d after building]</param>
/// <param name="Litres">Likely amount. [L]</param>
public sealed record TurningWater(int Day, double Litres);
