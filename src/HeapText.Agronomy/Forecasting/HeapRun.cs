namespace HeapText.Agronomy.Forecasting;

/// <summary>One heap as it goes: heat, mass and water of core and shell, hour by hour.</summary>
internal sealed class HeapRun
{
    private const double SecondsPerDay = 86_400;

    private readonly HeapStart _start;
    private readonly Member _member;
    private readonly double _ambientC;
    private readonly double _ambientVapour;
    private readonly double _settling;
    private Zone _core, _shell;
    private HeapBody _body;
    private double _airPace, _openness, _coreMoist, _shellMoist;
    private double _coreToShell, _coreToGround, _shellToAir, _surfaceVapour;
    private double _lastStir;

    internal HeapRun(HeapStart start, Member member, double ambientC)
    {
        (_start, _member, _ambientC) = (start, member, ambientC);
        _ambientVapour = HeapAir.Saturation(ambientC).Held * Parameters.AmbientHumidity;
        var whole = new Zone
        {
            Fast = start.Fast,
            Medium = start.Medium,
            Slow = start.Slow,
            Lasting = start.Lasting,
            Ash = start.Ash,
            Water = (start.WaterWithin * member.Wetness) + start.WaterAdded,
            Celsius = ambientC,
            Vigour = start.Vigour,
        };
        (WaterGiven, _settling) = (whole.Water, SettlingOf((whole.Water + whole.Dry) / start.CubicMetres));
        Split(whole);
    }

    /// <summary>Days since building. [d]</summary>
    internal double Age { get; private set; }

    /// <summary>The heap as it stands.</summary>
    internal HeapDay Now => new(_core.Celsius, Moisture, Dry, Water, CubicMetres, CarbonNitrogen);

    internal double Dry => _core.Dry + _shell.Dry;

    internal double Water => _core.Water + _shell.Water;

    internal double Moisture => Water / (Water + Dry);

    /// <summary>Water brought by the materials and poured on. [kg]</summary>
    internal double WaterGiven { get; private set; }

    /// <summary>Water gone as vapour. [kg]</summary>
    internal double WaterLost { get; private set; }

    /// <summary>Dry matter gone as carbon dioxide. [kg]</summary>
    internal double DryLost { get; private set; }

    /// <summary>Carbon to nitrogen of what is left, no nitrogen being lost; infinite without. [kg C / kg N]</summary>
    internal double CarbonNitrogen => _start.Nitrogen > 0
        ? Math.Max(0, _start.Carbon - (Destroyed / Parameters.SolidsPerCarbon)) / _start.Nitrogen
        : double.PositiveInfinity;

    /// <summary>Volume. [m3] Falls with the dry matter and by settling, never grows.</summary>
    /// <remarks>
    /// <code>V = V0 (D / D0) (1 − s (1 − exp(−t / 3)))</code>
    /// D dry matter [kg]; s settling, 0.5 at 100 kg/m3 to 0.2 at 600 kg/m3 wet bulk density [-]; t age [d].
    /// <para>Source: chosen so that planning values hold: volume left 40-60 % of dung and straw, 25-40 % of fluffy
    /// heaps, from memory; 30-50 % left [MANITOBA].</para>
    /// </remarks>
    internal double CubicMetres => _start.CubicMetres * Dry / _start.Dry
        * (1 - (_settling * (1 - Math.Exp(-Age / Parameters.SettlingDays))));

    /// <summary>Whether it would hardly warm again: little to rot is left, and enough of it is gone.</summary>
    internal bool IsStable
    {
        get
        {
            var unrest = ((_core.Unrest * _core.Volatile) + (_shell.Unrest * _shell.Volatile))
                / (_core.Volatile + _shell.Volatile);
            var left = _core.Fast + _core.Medium + _shell.Fast + _shell.Medium;
            return _member.Decay * unrest <= Parameters.StableRate
                && left <= (1 - Parameters.LeastRotted) * (_start.Fast + _start.Medium);
        }
    }

    private double Destroyed => DryLost / (1 - Parameters.WaterOfDecay);

    /// <summary>Goes on for a day: by the hour while it is hot or freshly stirred, else in steps of three.</summary>
    internal void PassDay()
    {
        const int hourly = 24, slowly = 8;
        const double settledDays = 5, coolAbove = 12;
        Stand(_body.ScaledTo(CubicMetres));
        var steps = Age < _lastStir + settledDays || _core.Celsius > _ambientC + coolAbove ? hourly : slowly;
        for (var i = 0; i < steps; i++)
        {
            if (i % (steps / 4) == 0) Refresh();
            Step(1.0 / steps);
        }
    }

    /// <summary>Turns the heap: outside in, cooler, some steam off; then waters it.</summary>
    /// <param name="waters">Whether a dry heap is brought back to the moisture sought.</param>
    /// <returns>Water added. [L]</returns>
    internal double Turn(bool waters)
    {
        var whole = Zone.Mix(_core, _shell);
        var warmth = Math.Max(0, whole.Celsius - _ambientC) * Parameters.TurningLoss;
        var steam = Math.Min(
            whole.Water / 2, warmth * whole.HeatCapacity * Parameters.TurningSteam / Parameters.LatentHeat);
        whole.Celsius -= warmth;
        whole.Water -= steam;
        WaterLost += steam;
        var added = waters ? whole.WaterToReach(Parameters.SoughtMoisture) : 0;
        whole.Pour(added, _ambientC);
        WaterGiven += added;
        _lastStir = Age;
        Split(whole);
        return added;
    }

    /// <summary>Waters a heap that is dry to the hand, without turning it.</summary>
    internal void WaterWhenDry()
    {
        if (Moisture >= Parameters.DryMoisture) return;
        var (core, shell) = (
            _core.WaterToReach(Parameters.SoughtMoisture), _shell.WaterToReach(Parameters.SoughtMoisture));
        _core.Pour(core, _ambientC);
        _shell.Pour(shell, _ambientC);
        WaterGiven += core + shell;
    }

    private void Split(in Zone whole)
    {
        Stand(_start.Body.ScaledTo(_start.CubicMetres * whole.Dry / _start.Dry));
        _core = whole.Part(_body.CoreShare);
        _shell = whole.Part(1 - _body.CoreShare);
    }

    private void Stand(HeapBody body)
    {
        _body = body;
        (_coreToShell, _shellToAir) = (body.CoreToShell, body.ShellToAir * _member.Loss);
        _coreToGround = body.CoreToGround * _member.Loss;
        _surfaceVapour = body.Surface * Parameters.SurfaceVapour;
    }

    // Moisture, air space and C/N change slowly: looking every few hours is enough.
    private void Refresh()
    {
        var space = HeapAir.Space(
            _core.Volatile + _shell.Volatile, _core.Ash + _shell.Ash, Water, CubicMetres);
        _openness = HeapAir.Openness(space) * Parameters.Draught * _member.Draught * _body.Base;
        _airPace = _member.Decay * Factors.AirSpace(space)
            * Factors.CarbonNitrogen(_start.CarbonNitrogen, CarbonNitrogen);
        _coreMoist = Factors.Moisture(_core.Moisture);
        _shellMoist = Factors.Moisture(_shell.Moisture);
    }

    private void Step(double days)
    {
        var seconds = days * SecondsPerDay;
        var coreRot = Rot(ref _core, _coreMoist, days);
        var shellRot = Rot(ref _shell, _shellMoist, days);
        DryLost += (coreRot + shellRot) * (1 - Parameters.WaterOfDecay);
        var air = (_openness * Math.Max(0, _core.Celsius - _ambientC))
            + (Parameters.AirPerSolids * (coreRot + shellRot) / seconds);

        var (coreHeld, coreSlope) = HeapAir.Saturation(_core.Celsius);
        var (shellHeld, shellSlope) = HeapAir.Saturation(_shell.Celsius);
        var (coreDamp, shellDamp) = (_core.Dampness, _shell.Dampness);
        var coreVapour = Evaporate(ref _core, air * ((coreHeld * coreDamp) - (shellHeld * shellDamp)), seconds);
        var leaving = air + _surfaceVapour;
        var shellVapour = Evaporate(ref _shell, leaving * ((shellHeld * shellDamp) - _ambientVapour), seconds);

        var (core, shell) = (_core.Celsius, _shell.Celsius);
        var sensible = air * Parameters.AirHeat;
        var coreGain = (coreRot * Parameters.HeatOfDecay / seconds) - (coreVapour * Parameters.LatentHeat)
            - ((_coreToShell + sensible) * (core - shell)) - (_coreToGround * (core - _ambientC));
        var shellGain = (shellRot * Parameters.HeatOfDecay / seconds) - (shellVapour * Parameters.LatentHeat)
            + (_coreToShell * (core - shell)) - ((_shellToAir + sensible) * (shell - _ambientC));

        // Linearised in the zone's own temperature, so that an airy heap does not swing within a step.
        var coreStiff = _coreToShell + sensible + _coreToGround + (air * Parameters.LatentHeat * coreSlope * coreDamp);
        var shellStiff = _coreToShell + sensible + _shellToAir
            + (leaving * Parameters.LatentHeat * shellSlope * shellDamp);
        _core.Celsius += seconds * coreGain / (_core.HeatCapacity + (seconds * coreStiff));
        _shell.Celsius += seconds * shellGain / (_shell.HeatCapacity + (seconds * shellStiff));
        Age += days;
    }

    private double Rot(ref Zone zone, double moist, double days)
    {
        var growth = Factors.Temperature(zone.Celsius) * moist;
        return zone.Rot(growth * _airPace * zone.Vigour, growth, days);
    }

    private double Evaporate(ref Zone zone, double rate, double seconds)
    {
        var vapour = Math.Clamp(rate * seconds, 0, zone.Water / 4);
        zone.Water -= vapour;
        WaterLost += vapour;
        return vapour / seconds;
    }

    private double SettlingOf(double density)
    {
        var dense = Math.Clamp(
            (density - Parameters.LooseDensity) / (Parameters.DenseDensity - Parameters.LooseDensity), 0, 1);
        return Math.Min(0.8, _member.Settling * (Parameters.LooseSettling
            + (dense * (Parameters.DenseSettling - Parameters.LooseSettling))));
    }
}
