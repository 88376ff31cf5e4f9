using System.Text.Json;
using HeapText.Agronomy;
using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;

namespace HeapText.Service.Verbs;

/// <summary>
/// What <c>forecast</c> reads: <c>parts</c>, or what <c>recipe</c> wrote, as it stands or under <c>recipe</c>.
/// </summary>
internal sealed record ForecastInput : ForecastHeapInput
{
    public IReadOnlyList<ForecastPartInput?>? Parts { get; init; }

    public ForecastHeapInput? Recipe { get; init; }

    public double? AmbientC { get; init; }

    public IReadOnlyList<int>? TurnDays { get; init; }

    public int? Days { get; init; }

    public IReadOnlyList<FieldCheckInput?>? Checks { get; init; }

    internal (ForecastRequest?, InputFault?) ToRequest()
    {
        if (CheckShape() is { } shape)
        {
            return (null, shape);
        }

        var (parts, fault) = Parts is not null ? ReadParts()
            : Recipe is null ? ReadTotal()
            : Within(Recipe.ReadTotal(), "recipe");
        var (checks, checkFault) = FieldCheckInput.ReadAll(Checks ?? []);
        return fault is not null || checkFault is not null
            ? (null, fault ?? checkFault)
            : (With(Recipe ?? this, parts!, checks!), null);
    }

    private ForecastRequest With(
        ForecastHeapInput heap, IReadOnlyList<ForecastPart> parts, IReadOnlyList<FieldCheck> checks)
    {
        var bare = new ForecastRequest { Parts = parts };
        return bare with
        {
            WaterLitres = heap.WaterLitres ?? 0,
            VolumeLitres = heap.VolumeLitres,
            Dimensions = heap.Dimensions,
            AmbientC = AmbientC ?? bare.AmbientC,
            TurnDays = TurnDays ?? bare.TurnDays,
            Days = Days ?? bare.Days,
            Checks = checks,
        };
    }

    private InputFault? CheckShape()
    {
        var given = (Parts is null ? 0 : 1) + (Total is null ? 0 : 1) + (Recipe is null ? 0 : 1);
        return given == 0 ? new InputFault("parts", "must be given, or what recipe wrote")
            : given > 1 ? new InputFault("parts", "must not be given together with a recipe, nor two recipes")
            : Parts is not null && (MassKg ?? MoisturePercent) is not null
                ? new InputFault(MassKg is null ? "moisturePercent" : "massKg", "belongs to a recipe, not to parts")
            : CheckUnknown() ?? Recipe?.CheckUnknown()?.Within("recipe");
    }

    private (IReadOnlyList<ForecastPart>?, InputFault?) ReadParts()
    {
        for (var i = 0; i < Parts!.Count; i++)
        {
            if (Parts[i]?.MassKg is null)
            {
                return (null, new InputFault($"parts[{i}].massKg", "must be given"));
            }
        }

        return ([.. Parts.Select(part => part!.ToPart())], null);
    }

    private static (IReadOnlyList<ForecastPart>?, InputFault?) Within(
        (IReadOnlyList<ForecastPart>? Parts, InputFault? Fault) read, string outer) =>
        (read.Parts, read.Fault?.Within(outer));
}

/// <summary>Some of one material; a given figure overrides the table.</summary>
internal sealed record ForecastPartInput(string? Material, double? MassKg) : PiledFiguresInput
{
    internal ForecastPart ToPart() => new(Material, MassKg!.Value, Given);
}

/// <summary>What a farmer felt; smell and pests, as <c>read</c> writes them, are read past.</summary>
internal sealed record FieldCheckInput(
    int? Day, string? Heat, string? Moisture, string? Rod, string? Smell, string? Pests)
{
    internal static (IReadOnlyList<FieldCheck>?, InputFault?) ReadAll(IReadOnlyList<FieldCheckInput?> checks)
    {
        List<FieldCheck> read = [];
        for (var i = 0; i < checks.Count; i++)
        {
            if (checks[i]?.Day is not { } day)
            {
                return (null, new InputFault($"checks[{i}].day", "must be given"));
            }

            if (!TryRead<Heat>(checks[i]!.Heat, out var heat))
            {
                return (null, new InputFault($"checks[{i}].heat", "must be hot, warm, cool or cold"));
            }

            if (!TryRead<Moisture>(checks[i]!.Moisture, out var moisture))
            {
                return (null, new InputFault($"checks[{i}].moisture", "must be dripping, wet, good or dry"));
            }

            if (!TryRead<RodKind>(checks[i]!.Rod, out var rod))
            {
                return (null, new InputFault($"checks[{i}].rod", "must be metal, wood or hand"));
            }

            read.Add(new FieldCheck(day, heat, moisture, rod));
        }

        return (read, null);
    }

    private static bool TryRead<T>(string? word, out T? value)
        where T : struct, Enum
    {
        value = null;
        foreach (var one in Enum.GetValues<T>())
        {
            // Keys are the names in lower case; numbers and other spellings are not.
            if (JsonNamingPolicy.KebabCaseLower.ConvertName(Enum.GetName(one)!) == word) value = one;
        }

        return word is null || value is not null;
    }
}
