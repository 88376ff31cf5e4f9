using HeapText.Agronomy.Mixing;

namespace HeapText.Service.Verbs;

/// <summary>Figures of some material, which override the table.</summary>
internal abstract record FiguresInput
{
    public double? CarbonPercent { get; init; }

    public double? NitrogenPercent { get; init; }

    public double? Cn { get; init; }

    public double? MoisturePercent { get; init; }

    internal virtual GivenFigures Given => new()
    {
        CarbonPercent = CarbonPercent,
        NitrogenPercent = NitrogenPercent,
        CarbonNitrogen = Cn,
        MoisturePercent = MoisturePercent,
    };
}

/// <summary>The same of what is piled up, with how heavily it lies.</summary>
internal abstract record PiledFiguresInput : FiguresInput
{
    public double? DensityKgPerM3 { get; init; }

    internal override GivenFigures Given => base.Given with { DensityKgPerM3 = DensityKgPerM3 };
}
