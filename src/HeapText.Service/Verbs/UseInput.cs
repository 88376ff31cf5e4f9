using System.Text.Json;
using HeapText.Agronomy;
using HeapText.Agronomy.Use;

namespace HeapText.Service.Verbs;

/// <summary>What <c>use</c> reads; <c>prices</c> are of one kilogram, by key of the fertiliser.</summary>
internal sealed record UseInput(
    string? Crop,
    double? AreaM2,
    double? Plants,
    double? CompostKg,
    double? MoisturePercent,
    double? NitrogenPercent,
    IReadOnlyDictionary<string, double>? Prices,
    string? CompostState,
    string? Hygiene)
{
    internal (UseRequest?, InputFault?) ToRequest()
    {
        if (Crop is null) return (null, new InputFault("crop", "must be given"));

        var (state, noState) = Read<CompostState>("compostState", CompostState);
        var (hygiene, noHygiene) = Read<Hygiene>("hygiene", Hygiene);
        return (noState ?? noHygiene) is { } fault
            ? (null, fault)
            : (new UseRequest
            {
                Crop = Crop,
                AreaM2 = AreaM2,
                Plants = Plants,
                CompostKg = CompostKg,
                MoisturePercent = MoisturePercent,
                NitrogenPercent = NitrogenPercent,
                Prices = Prices ?? new Dictionary<string, double>(),
                State = state,
                Hygiene = hygiene,
            }, null);
    }

    /// <summary>A choice by its name; the first when none is given.</summary>
    private static (T, InputFault?) Read<T>(string field, string? text)
        where T : struct, Enum
    {
        if (text is null) return (default, null);

        var choices = Enum.GetValues<T>().ToDictionary(one => JsonNamingPolicy.KebabCaseLower.ConvertName($"{one}"));
        return choices.TryGetValue(text, out var choice)
            ? (choice, null)
            : (default, new InputFault(field, $"must be one of {string.Join(", ", choices.Keys)}"));
    }
}
