using CsCheck;
using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Tests.Forecasting;

/// <summary>Heaps of any materials, sizes and weather.</summary>
internal static class RandomHeaps
{
    private static readonly string[] Keys = [.. MaterialTable.All
        .Where(material => material.Figures is not null && material.Form != MaterialForm.Liquid)
        .Select(material => material.Key)];

    private static readonly Gen<ForecastPart> Part = Gen.Select(
        OneOf(Keys), Gen.Double[1, 300], (key, mass) => new ForecastPart(key, mass));

    internal static Gen<T> OneOf<T>(IReadOnlyList<T> all) => Gen.Int[0, all.Count - 1].Select(i => all[i]);

    internal static Gen<FieldCheck> Check { get; } = Gen.Select(
        Gen.Int[0, 40], Gen.Enum<Heat>(), Gen.Enum<Moisture>(), Gen.Enum<RodKind>(),
        (day, heat, moisture, rod) => new FieldCheck(day, heat, moisture, rod));

    internal static Gen<ForecastRequest> Any { get; } = Gen.Select(
        Part.Array[1, 8], Gen.Double[0, 500], Gen.Double[-10, 45], Gen.Int[1, 60].Array[0, 6],
        (parts, water, ambient, turns) => new ForecastRequest
        {
            Parts = parts,
            WaterLitres = water,
            AmbientC = ambient,
            TurnDays = turns,
            Days = 60,
        });
}
