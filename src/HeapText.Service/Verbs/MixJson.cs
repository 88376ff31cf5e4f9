using HeapText.Agronomy;
using HeapText.Agronomy.Mixing;

namespace HeapText.Service.Verbs;

/// <summary>What <c>mix</c> reads.</summary>
internal sealed record MixInput(IReadOnlyList<MixPartInput?>? Parts, double? TargetMoisturePercent)
{
    internal InputFault? Check()
    {
        if (Parts is null)
        {
            return new InputFault("parts", "must be given");
        }

        for (var i = 0; i < Parts.Count; i++)
        {
            if (Parts[i]?.MassKg is null)
            {
                return new InputFault($"parts[{i}].massKg", "must be given");
            }
        }

        return null;
    }

    internal MixProblem ToProblem() => new()
    {
        Parts = [.. Parts!.Select(part => part!.ToPart())],
        TargetMoisturePercent = TargetMoisturePercent ?? MixProblem.DefaultTargetMoisturePercent,
    };
}

/// <summary>One part of a mix; a given figure overrides the table.</summary>
internal sealed record MixPartInput(string? Material, double? MassKg) : FiguresInput
{
    internal MixPart ToPart() => new(Material, MassKg!.Value, Given);
}

/// <summary>
/// What <c>mix</c> writes; <c>cn</c> is null without nitrogen, all three of carbon and nitrogen where a part has mass
/// and moisture alone.
/// </summary>
internal sealed record MixOutput(
    double MassKg,
    double DryKg,
    double? CarbonKg,
    double? NitrogenKg,
    double? Cn,
    double MoisturePercent,
    double WaterToAddLitres)
{
    internal static MixOutput From(Mix mix) => new(
        mix.Fresh.Kilograms,
        mix.Dry.Kilograms,
        mix.Carbon?.Kilograms,
        mix.Nitrogen?.Kilograms,
        mix.CarbonNitrogen,
        mix.Moisture.Percent,
        mix.WaterToAdd.Litres);
}
