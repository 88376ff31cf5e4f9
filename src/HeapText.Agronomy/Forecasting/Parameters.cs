namespace HeapText.Agronomy.Forecasting;

/// <summary>
/// The constants of the forecast: one set for all heaps. Sources by key in docs/agronomy/sources.md; the table with
/// how sure each is stands in docs/agronomy/forecast.md. "Chosen" is ours, "fitted" was set on the rows that
/// docs/agronomy/validation.md names.
/// </summary>
internal static class Parameters
{
    /// <summary>Decay rates at the best temperature, moisture and air. [1/d] Fitted; see OverallRate.</summary>
    internal const double FastRate = 0.35, MediumRate = 0.055, SlowRate = 0.004;

    /// <summary>Cardinal temperatures. [C] Source: [RICHARD], from memory.</summary>
    internal const double ColdestC = 5, BestC = 57, HottestC = 72;

    /// <summary>Moisture factor 1/(exp(b - a w) + 1). [-] Source: [HAUG], from memory.</summary>
    internal const double MoistureSlope = 17.684, MoistureOffset = 7.0622;

    /// <summary>Air-space factor 1/(exp(b - a f) + 1). [-] Source: [HAUG], from memory.</summary>
    internal const double AirSpaceSlope = 23.675, AirSpaceOffset = 3.4945;

    /// <summary>C/N within which nitrogen neither lacks nor harms. [kg C / kg N] 20-40 by [NRAES54].</summary>
    internal const double LeastCarbonNitrogen = 20, MostCarbonNitrogen = 40;

    /// <summary>Least the C/N factor can be on either side. [-] Chosen.</summary>
    internal const double LeastNitrogenFactor = 0.5, LeastCarbonFactor = 0.3;

    /// <summary>Heat of a kilogram of volatile solids destroyed. [J/kg] Source: [HAUG] 17-22 MJ, from memory.</summary>
    internal const double HeatOfDecay = 19e6;

    /// <summary>Share of destroyed solids that ends as water: C6(H2O)5. [kg/kg] Derived, 90/162.</summary>
    internal const double WaterOfDecay = 90.0 / 162;

    /// <summary>Volatile solids per carbon. [kg/kg] Source: [GOTAAS], 1.8 within 2-10 %.</summary>
    internal const double SolidsPerCarbon = 1.8;

    /// <summary>Most of dry matter that can be volatile. [kg/kg] Chosen; no plant is without ash.</summary>
    internal const double MostVolatile = 0.97;

    /// <summary>Heat capacities. [J/kg K] Source: [HAUG], solids 1050-1400, all from memory.</summary>
    internal const double WaterHeat = 4180, SolidsHeat = 1250, AirHeat = 1006;

    /// <summary>Heat to evaporate water. [J/kg] Source: [HAUG] 2.36-2.44 MJ, from memory.</summary>
    internal const double LatentHeat = 2.4e6;

    /// <summary>Conductivity of the heap [W/m K] 0.2-0.5 and surface coefficient [W/m2 K] 5-15; [HAUG], from
    /// memory.</summary>
    internal const double Conductivity = 0.35, SurfaceCoefficient = 10;

    /// <summary>Depth of the cool outer layer. [m] Chosen; the outer 0.4 m is much cooler [EDWARDS].</summary>
    internal const double ShellDepthM = 0.25;

    /// <summary>Ground between the base and soil at air temperature. [m of heap] Chosen.</summary>
    internal const double GroundDepthM = 0.5;

    /// <summary>Air drawn up by warmth at an air space of one half. [kg/s m2 K] Fitted; a permeability of
    /// 3e-10 m2.</summary>
    internal const double Draught = 5e-7;

    /// <summary>Most the draught grows in an airy heap, under its cover. [-] Fitted.</summary>
    internal const double MostDraught = 10;

    /// <summary>Air that passes for the oxygen used. [kg/kg VS] 1.4 kg O2 at 0.23 kg/kg air [HAUG], and half as
    /// much again unused, chosen.</summary>
    internal const double AirPerSolids = 1.4 / 0.23 * 1.5;

    /// <summary>Dampness of the air around. [-] Chosen.</summary>
    internal const double AmbientHumidity = 0.6;

    /// <summary>Moisture at which the pores' air is half damp. [kg/kg, wet] Chosen.</summary>
    internal const double HalfDampMoisture = 0.05;

    /// <summary>Vapour let through by a cover of 5 cm dry straw. [kg/s m2] Derived: diffusion in air, 2.5e-5 m2/s,
    /// two thirds of it open, 1.2 kg/m3 of air.</summary>
    internal const double SurfaceVapour = 4e-4;

    /// <summary>Share of life present at the start, without and with dung, soil or old compost. [-] Chosen.</summary>
    internal const double VigourAtStart = 0.1, VigourWithDung = 0.3;

    /// <summary>Share of dry matter in dung, soil or old compost that starts a heap fully. [kg/kg] Chosen.</summary>
    internal const double DungThatStarts = 0.1;

    /// <summary>Growth of life at its best. [1/d] Fitted.</summary>
    internal const double Growth = 8;

    /// <summary>Share of its warmth above the air that a heap loses when turned, and how much of that as steam.
    /// [-] Chosen.</summary>
    internal const double TurningLoss = 0.5, TurningSteam = 0.7;

    /// <summary>Moisture sought when watering. [kg/kg, wet] Source: [NRAES54], middle of the preferred.</summary>
    internal const double SoughtMoisture = 0.55;

    /// <summary>Moisture below which a handful feels dry. [kg/kg, wet] Middle between crumbling below 40 % and right
    /// from 50 %, common extension advice, from memory.</summary>
    internal const double DryMoisture = 0.45;

    /// <summary>Settling: share of the volume lost beside decay, by wet bulk density, and its time. [-, kg/m3, d]
    /// Days fitted, shares chosen: volume left 40-60 % of dung and straw, 25-40 % of fluffy heaps, from memory.
    /// </summary>
    internal const double
        LooseSettling = 0.5, DenseSettling = 0.2, LooseDensity = 100, DenseDensity = 600, SettlingDays = 3;

    /// <summary>Particle densities. [kg/m3] Source: [AGNEW] 1550 organic, 2650 ash, from memory.</summary>
    internal const double OrganicDensity = 1550, AshDensity = 2650, WaterDensity = 1000;

    /// <summary>A part of which nobody says how heavily it lies, as piled. [kg/m3] Chosen, between loose stalks at
    /// 40 and dung at 860.</summary>
    internal const double UsualDensity = 300;

    /// <summary>Stable: carbon given off at 37 C. [kg C/kg VS d] Upper end of 2-4 mg/g d [CCQC], from memory.</summary>
    internal const double StableRate = 0.004, StableTestC = 37;

    /// <summary>Share of the fast and medium pools that must be gone. [-] Chosen; wood is stable unrotted.</summary>
    internal const double LeastRotted = 0.5;

    /// <summary>Longest time looked ahead for readiness. [d] Chosen.</summary>
    internal const int HorizonDays = 365;
}
