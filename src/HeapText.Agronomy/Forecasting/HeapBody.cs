namespace HeapText.Agronomy.Forecasting;

/// <summary>The shape of a heap: a core and a cooler shell, on the ground.</summary>
/// <param name="WidthM">Width. [m]</param>
/// <param name="LengthM">Length. [m]</param>
/// <param name="HeightM">Height. [m]</param>
internal readonly record struct HeapBody(double WidthM, double LengthM, double HeightM)
{
    private const double UsualWidthM = 1.5, UsualHeightM = 1.2, FlatHeight = 0.8;

    private double Depth => Math.Min(Parameters.ShellDepthM, Math.Min(WidthM, Math.Min(LengthM, HeightM)) / 4);

    private double CoreWidth => WidthM - (2 * Depth);

    private double CoreLength => LengthM - (2 * Depth);

    private double CoreHeight => HeightM - Depth;

    /// <summary>Base the draught rises from. [m2]</summary>
    internal double Base => WidthM * LengthM;

    /// <summary>Top and sides. [m2]</summary>
    internal double Surface => Base + (2 * HeightM * (WidthM + LengthM));

    /// <summary>Share of the volume that is core.</summary>
    internal double CoreShare => CoreWidth * CoreLength * CoreHeight / (WidthM * LengthM * HeightM);

    /// <summary>Conductance from shell to air: half the shell, then the surface. [W/K]</summary>
    internal double ShellToAir => Surface
        / ((Depth / 2 / Parameters.Conductivity) + (1 / Parameters.SurfaceCoefficient));

    /// <summary>Conductance from core to shell: a quarter of the core, then half the shell. [W/K]</summary>
    internal double CoreToShell =>
        ((CoreWidth * CoreLength) + (2 * CoreHeight * (CoreWidth + CoreLength))) * Parameters.Conductivity
        / ((Depth / 2) + (Math.Min(CoreWidth, Math.Min(CoreLength, CoreHeight)) / 4));

    /// <summary>Conductance from core to ground. [W/K]</summary>
    internal double CoreToGround =>
        CoreWidth * CoreLength * Parameters.Conductivity / ((CoreHeight / 4) + Parameters.GroundDepthM);

    /// <summary>A usual shape for a volume: 1.5 m wide and 1.2 m high, or a flat cube when that is too long.</summary>
    internal static HeapBody Usual(double cubicMetres)
    {
        var length = cubicMetres / (UsualWidthM * UsualHeightM);
        if (length >= UsualWidthM) return new HeapBody(UsualWidthM, length, UsualHeightM);
        var side = Math.Cbrt(cubicMetres / FlatHeight);
        return new HeapBody(side, side, side * FlatHeight);
    }

    /// <summary>The same shape, shrunk or grown to a volume. [m3]</summary>
    internal HeapBody ScaledTo(double cubicMetres)
    {
        var scale = Math.Cbrt(cubicMetres / (WidthM * LengthM * HeightM));
        return new HeapBody(WidthM * scale, LengthM * scale, HeightM * scale);
    }
}
